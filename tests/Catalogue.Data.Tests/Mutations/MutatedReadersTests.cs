using Catalogue.Testing.Mutations;

namespace Catalogue.Data.Tests.Mutations;

public sealed class MutatedReadersTests
{
    private const int Cases = 500;

    public static TheoryData<string> Names => [.. MutatedReaders.All.Select(reader => reader.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_DamagedFiles_AreReadOrRefusedInBoundedTimeAndMemory(string name)
    {
        var reader = MutatedReaders.All.Single(reader => reader.Name == name);
        Assert.All(reader.Seeds, seed => Assert.True(reader.Read(seed), "a whole file is read"));

        var run = MutationRun.Of(reader, Cases, seed: 20_140_917);

        Assert.Empty(run.Failures);
        Assert.Equal(Cases, run.Read + run.Refused);
        Assert.True(run is { Read: > Cases / 10, Refused: > 0 }, $"{run.Read} read, {run.Refused} refused");
    }
}
