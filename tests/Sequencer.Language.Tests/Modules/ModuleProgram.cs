using System.Collections.Immutable;
using Sequencer.Language.Checking;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Modules;

/// <summary>A program and its library, one of them with a change; guillemets (taken out before checking) mark what the one diagnostic points at.</summary>
internal sealed class ModuleProgram
{
    public const string LibraryName = "lib/tank.seqlib";

    /// <summary>A filtered level, a dosing pump and a pair of them.</summary>
    public const string Library = """
        library 1

        --| A tank's level, filtered, with its alarm.
        module Level(name level, address level_at, text title, number bottom, quantity full, quantity filter, quantity high)
          input level bottom .. full at level_at title bad after filter
          alarm A1 "Level high" when level > high, on after 5 s

        module Pump(name pump, address pump_at, name chemical, quantity rate, name mixed)
          output pump motor at pump_at "Dosing pump" safe stopped, delivers chemical at rate
          interlock I1 "Dosing needs mixing" pump blocked unless mixed
          require H1 "Unmixed dosing" never pump and not mixed

        module Pair(name duty, address duty_at, name standby, address standby_at, name chemical, name mixed)
          equipment D is Pump(pump = duty, pump_at = duty_at, chemical = chemical, rate = 0.20 L/min, mixed = mixed)
          equipment S is Pump(pump = standby, pump_at = standby_at, chemical = chemical, rate = 0.20 L/min, mixed = mixed)
          interlock I1 "One at a time" duty, standby exclusive

        """;

    public const string Program = """
        language 1
        unit T1 "Tank"

        use "lib/tank.seqlib"

        input YS1 switch at %IX0.0 "Agitator running"

        equipment L1 is Level(level = LT1, level_at = %IW0, title = "Tank volume", bottom = 0,
            full = 6.000 m3, filter = 2 s, high = 5.000 m3)
        equipment LIMING is Pair(duty = P1, duty_at = %QX0.0, standby = P2, standby_at = %QX0.1, chemical = LIME, mixed = YS1)

        output AG1 motor at %QX0.2 "Agitator" safe stopped, confirm YS1 within 5 s

        reagent LIME "Lime slurry"

        procedure

          step 10 "Lime"
            run AG1
            run P1 for 20 s once a batch
            run P2 for 10 s once a batch while not P1
            limit 10 min then hold "Liming slow"
            go finish when LT1 < 1.000 m3

        """;

    private readonly Dictionary<string, SourceText> _files = new(StringComparer.Ordinal);
    private readonly string _expectedFile;
    private readonly TextSpan _expected;

    /// <param name="changes">Each the file (<c>P</c> for the program, <c>L</c> for the library), what is replaced, and with what.</param>
    public ModuleProgram(params (char File, string Old, string With)[] changes)
    {
        string library = Library;
        string program = Program;
        foreach ((char file, string old, string with) in changes)
        {
            string text = file == 'P' ? program : library;
            Assert.Contains(old, text, StringComparison.Ordinal);
            int at = text.IndexOf(old, StringComparison.Ordinal);
            text = text[..at] + with + text[(at + old.Length)..];
            (program, library) = file == 'P' ? (text, library) : (program, text);
        }

        (_expectedFile, string marked) = program.Contains('«', StringComparison.Ordinal) ? ("tank.seq", program) : (LibraryName, library);
        int start = marked.IndexOf('«', StringComparison.Ordinal);
        _expected = start < 0 ? default : TextSpan.Between(start, marked.IndexOf('»', StringComparison.Ordinal) - 1);
        _files.Add(LibraryName, new SourceText(LibraryName, Unmarked(library)));
        Text = new SourceText("tank.seq", Unmarked(program));
    }

    public SourceText Text { get; }

    public ModuleProgram With(string name, string library)
    {
        _files.Add(name, new SourceText(name, library));
        return this;
    }

    public CheckResult Check() => ProgramChecker.Check(Text, 100, libraries: Read);

    public Diagnostic ReportsOnly(string code)
    {
        ImmutableArray<Diagnostic> found = Check().Diagnostics;
        string shown = DiagnosticRenderer.Render(found);
        Assert.True(found.Length == 1, $"one diagnostic expected:\n{shown}");
        Assert.True(found[0].Code == code, $"{code} expected:\n{shown}");
        SourceSpan place = found[0].Span.Written;
        Assert.True(place.Source.Path == _expectedFile && place.Span == _expected, $"{_expectedFile} {_expected} expected, {place.Span} found:\n{shown}");
        Assert.NotEmpty(found[0].Reason);
        Assert.NotEmpty(found[0].Mend);
        return found[0];
    }

    private SourceText? Read(string file, SourceSpan named, DiagnosticBag diagnostics) => _files[file];

    private static string Unmarked(string text) => text.Replace("«", "", StringComparison.Ordinal).Replace("»", "", StringComparison.Ordinal);
}
