using Sequencer.Plant.Chemistry;
using Sequencer.Testing;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>Chemical systems for tests: the library's, and the library's with a table from Reference/ laid over it.</summary>
internal static class Tables
{
    public static ChemicalSystem Minteq { get; } = ChemicalSystem.Default();

    public static ChemicalSystem With(string file) =>
        Minteq.With(File.ReadAllText(RepositoryPath.At("tests", "Sequencer.Plant.Tests", "Chemistry", "Reference", file)));
}
