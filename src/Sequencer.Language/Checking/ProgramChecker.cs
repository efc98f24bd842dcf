using Sequencer.Language.Binding;
using Sequencer.Language.Parsing;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>
/// The whole way from text to a checked program: parse, bind, rules. Every mistake of the file is told in
/// one pass; rules run only on a program whose names and units are sound.
/// </summary>
public static class ProgramChecker
{
    /// <param name="text">The program file.</param>
    /// <param name="scanMilliseconds">The site's scan period, above zero.</param>
    /// <param name="cache">Trees of lines seen before; give the same one again after an edit.</param>
    public static CheckResult Check(SourceText text, int scanMilliseconds, ParseCache? cache = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(scanMilliseconds, 1);
        DiagnosticBag diagnostics = new();
        ParsedProgram parsed = ProgramParser.Parse(text, cache ?? new ParseCache(), diagnostics);
        if (!parsed.IsWhole)
        {
            return new CheckResult(null, diagnostics.InOrder());
        }

        UnitProgram program = ProgramBinder.Bind(parsed, scanMilliseconds, diagnostics);
        if (diagnostics.HasErrors)
        {
            return new CheckResult(null, diagnostics.InOrder());
        }

        RuleContext context = new(scanMilliseconds, diagnostics);
        foreach (IProgramRule rule in ProgramRules.All)
        {
            rule.Check(program, context);
        }

        return new CheckResult(program, diagnostics.InOrder());
    }
}
