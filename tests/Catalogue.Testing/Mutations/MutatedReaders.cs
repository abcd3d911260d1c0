using System.Text;
using Catalogue.Data.Components.Lists;
using Catalogue.Domain.Components.Lists;
using Catalogue.Testing.Components.Lists;

namespace Catalogue.Testing.Mutations;

/// <summary>
/// The readers that are held against damaged files. A new kind of file: one more entry with some whole files to damage, a mutation that suits
/// it, and what must hold of every outcome.
/// </summary>
public static class MutatedReaders
{
    /// <summary>All readers.</summary>
    public static IReadOnlyList<MutatedReader> All { get; } =
    [
        new("lists", [.. Files("Lists"), .. Texts()], (mutator, seed) => mutator.Text(seed), ReadList),
        new("workbooks", [SampleWorkbooks.TwoBoards().Bytes(), SampleWorkbooks.PanelAndCase().Bytes()], (mutator, seed) => mutator.Archive(seed), ReadList),
    ];

    private static bool ReadList(byte[] content)
    {
        switch (ComponentListFile.Read(content, null))
        {
            case ComponentListReading.Refused refused:
                Require(refused.Reason.Length > 10, "a refusal says why");
                return false;
            case ComponentListReading.Read list:
                Require(list.Rows.Count + list.Rejected.Count > 0, "what is read has rows");
                Require(list.Rows.All(row => row.AsRead.Select(cell => cell.Header).Distinct().Count() == row.AsRead.Count), "the cells of a row have names of their own");
                Require(!list.Rows.Any(row => row.AsRead.Any(cell => cell.Text.Contains('\0', StringComparison.Ordinal))), "no cell holds a NUL");
                Require(list.Rows.All(row => row.Quantity is null or (>= 0 and <= 1_000_000)), "a quantity is none or a sensible number");
                Require(list.Rejected.All(row => row.Reason.Length > 0), "a rejected row says why");
                Require(list.Readings.All(reading => reading.Readings.Count > 1), "an open cell has two readings at least");
                return true;
            default:
                throw new InvalidOperationException("A list is read or refused.");
        }
    }

    private static void Require(bool holds, string what)
    {
        if (!holds)
            throw new InvalidOperationException($"Broken: {what}.");
    }

    private static IEnumerable<byte[]> Files(string folder) =>
        Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Seeds", folder)).Order(StringComparer.Ordinal).Select(File.ReadAllBytes);

    private static IEnumerable<byte[]> Texts()
    {
        const string Table = "Taken down:\n\n| Ref | Qty | Value | MPN |\n|-----|----:|-------|-----|\n| C1, C2 | 2 | 68µF \\| 63 V | `OND-LH-680` |\n| R1-R3 | 3 | 10k | [OR-1](https://parts.example) |\n";
        yield return Encoding.UTF8.GetBytes(Table);
        yield return [.. Encoding.BigEndianUnicode.GetPreamble(), .. Encoding.BigEndianUnicode.GetBytes("部品記号\t個数\t値\nR1\t1\t10kΩ\nC1、C2\t2\t1µ\n")];
        yield return CodePagesEncodingProvider.Instance.GetEncoding(936)!.GetBytes("位号,数量,值,封装,描述\nR1,1,10k,0603,贴片电阻\nC1,1,1u,0603,贴片电容\n");
    }
}
