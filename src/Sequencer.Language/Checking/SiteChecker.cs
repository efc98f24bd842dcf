using Sequencer.Language.Binding;
using Sequencer.Language.Modules;
using Sequencer.Language.Parsing;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>
/// The whole way from the texts of a site's programs to checked programs: parse all, put modules in, declare all names, bind each, then
/// rules. Every mistake of all files is told in one pass; rules run only on programs whose names and units are sound.
/// </summary>
public static class SiteChecker
{
    /// <param name="texts">The program files, one unit each.</param>
    /// <param name="scanMilliseconds">The site's scan period, above zero.</param>
    /// <param name="complete">False where a file of the site could not be read: a unit that is named may be in it.</param>
    /// <param name="cache">Trees of lines seen before; give the same one again after an edit.</param>
    /// <param name="libraries">Reads the libraries that the programs use; null where they stand alone.</param>
    public static SiteCheckResult Check(IReadOnlyList<SourceText> texts, int scanMilliseconds, bool complete = true, ParseCache? cache = null, LibraryReader? libraries = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(scanMilliseconds, 1);
        ParseCache trees = cache ?? new ParseCache();
        SiteNames names = new() { UnitsMayBeMissing = !complete };
        List<CheckedFile> files = [.. texts.Select(text => Read(text, scanMilliseconds, trees, libraries, names))];
        files.ForEach(file => file.Binder?.Declare());
        files.ForEach(file => file.Program = file.Binder?.Bind());
        (UnitProgram, DiagnosticBag)[] bound = [.. files.Where(file => file.Program is not null).Select(file => (file.Program!, file.Diagnostics))];
        SiteRules.Check(bound);
        SharedRules.Check(bound, !names.UnitsMayBeMissing);
        StartRules.Check(bound, !names.UnitsMayBeMissing);
        return new SiteCheckResult([.. files.Select(file => Judge(file, scanMilliseconds))]);
    }

    private static CheckedFile Read(SourceText text, int scanMilliseconds, ParseCache trees, LibraryReader? libraries, SiteNames names)
    {
        DiagnosticBag diagnostics = new();
        ParsedProgram parsed = ProgramParser.Parse(text, trees, diagnostics);
        if (parsed.IsWhole)
        {
            ParsedProgram expanded = ModuleExpansion.Expand(parsed, libraries, trees, diagnostics);
            return new CheckedFile(new ProgramBinder(expanded, scanMilliseconds, names, diagnostics), diagnostics);
        }

        names.UnitsMayBeMissing = true;
        return new CheckedFile(null, diagnostics);
    }

    private static CheckResult Judge(CheckedFile file, int scanMilliseconds)
    {
        DiagnosticBag diagnostics = file.Diagnostics;
        if (file.Program is not { } program || file.Binder is null || diagnostics.HasErrors)
        {
            return new CheckResult(null, diagnostics.InOrder());
        }

        RuleContext context = new(scanMilliseconds, diagnostics, file.Binder.ReadElsewhere);
        foreach (IProgramRule rule in ProgramRules.All)
        {
            rule.Check(program, context);
        }

        return new CheckResult(program, diagnostics.InOrder());
    }

    private sealed class CheckedFile(ProgramBinder? binder, DiagnosticBag diagnostics)
    {
        public ProgramBinder? Binder { get; } = binder;

        public DiagnosticBag Diagnostics { get; } = diagnostics;

        public UnitProgram? Program { get; set; }
    }
}
