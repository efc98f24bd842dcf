using CsCheck;
using Sequencer.Language.Checking;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Modules;

/// <summary>Whatever a slip of the hand makes of a library or of its use, it is told, at a place in a file, and nothing breaks.</summary>
public sealed class SpoiltModuleTests
{
    private static readonly string[] Pieces =
        ["(", ")", ",", "=", "\"", "\n", " ", "--", "-", ".", "%", "module", "equipment", "is", "use", "library", "name", "quantity", "level", "Pump", "Pair", "P1", "0", "5 m3", "\t", "_", "input", "unless"];

    [Fact]
    public void A_spoilt_library_or_program_is_told_and_nothing_breaks() =>
        Gen.Select(Gen.Bool, Gen.Select(Gen.Int[0, 2000], Gen.Int[0, 12], Gen.Int[0, 200]).Array[1, 4]).SampleRepeatably(
            (isLibrary, slips) =>
            {
                string program = isLibrary ? ModuleProgram.Program : Spoil(ModuleProgram.Program, slips);
                string library = isLibrary ? Spoil(ModuleProgram.Library, slips) : ModuleProgram.Library;
                CheckResult result = ProgramChecker.Check(new SourceText("p.seq", program), 100, libraries: (file, _, _) => new SourceText(file, library));
                Assert.All(result.Diagnostics, told =>
                {
                    SourceSpan written = told.Span.Written;
                    Assert.Contains(written.Source.Content, new[] { program, library });
                    Assert.InRange(written.Span.End, written.Span.Start, written.Source.Content.Length);
                    Assert.NotEmpty(DiagnosticRenderer.Render(told));
                });
                Assert.True(result.Program is not null || result.HasErrors, program);
            },
            iterations: 600);

    /// <summary>At each place some letters are left out and a piece is put in.</summary>
    private static string Spoil(string text, (int Place, int Length, int Piece)[] slips)
    {
        foreach ((int place, int length, int piece) in slips)
        {
            int from = place % text.Length;
            text = text[..from] + (piece % 3 == 0 ? "" : Pieces[piece % Pieces.Length]) + text[Math.Min(text.Length, from + length)..];
        }

        return text;
    }
}
