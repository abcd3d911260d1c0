namespace Catalogue.Testing.Mutations;

/// <summary>A reader of strangers' files that is held against damaged ones.</summary>
/// <param name="Name">Its name, as the command line takes it.</param>
/// <param name="Seeds">The whole files that are damaged.</param>
/// <param name="Mutate">Damages one of them.</param>
/// <param name="Read">
/// Reads a file: true where something was read, false where it was refused with a reason. Whatever else is wrong with the outcome, it throws.
/// </param>
public sealed record MutatedReader(string Name, IReadOnlyList<byte[]> Seeds, Func<Mutator, byte[], byte[]> Mutate, Func<byte[], bool> Read);
