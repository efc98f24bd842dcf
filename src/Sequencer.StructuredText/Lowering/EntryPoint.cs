using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>What is run in every scan, and how long a scan is in milliseconds.</summary>
internal sealed record EntryPoint(UnitSyntax Unit, int ScanMilliseconds)
{
    /// <summary>Null where it has been reported that there is none.</summary>
    public static EntryPoint? Choose(SourceFileSyntax file, ReadingOptions options, DiagnosticBag diagnostics)
    {
        ConfigurationSyntax[] configurations = [.. file.Declarations.OfType<ConfigurationSyntax>()];
        UnitSyntax[] units = [.. file.Declarations.OfType<UnitSyntax>().Where(unit => unit.Kind != UnitKind.Function)];
        ProgramInstanceSyntax[] programs = [.. configurations.SelectMany(configuration => configuration.Programs)];
        UnitSyntax? unit = options.Unit is not null ? Named(units, options.Unit)
            : programs is [{ } only] ? Named(units, only.Type.Text)
            : programs.Length == 0 ? TheOnly(units)
            : null;
        if (unit is null)
        {
            diagnostics.Add(StructuredTextDiagnostics.NoEntryPoint(file.Source.At(0, 0), Fault(options, programs, units)));
            return null;
        }

        return Scan(file, options, configurations, programs, diagnostics) is { } scan ? new EntryPoint(unit, scan) : null;
    }

    private static UnitSyntax? Named(UnitSyntax[] units, string name) =>
        units.FirstOrDefault(unit => string.Equals(unit.Name.Text, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The only program, or the only block that no other contains.</summary>
    private static UnitSyntax? TheOnly(UnitSyntax[] units)
    {
        UnitSyntax[] programs = [.. units.Where(unit => unit.Kind == UnitKind.Program)];
        if (programs.Length > 0)
        {
            return programs.Length == 1 ? programs[0] : null;
        }

        HashSet<string> used = new(
            units.SelectMany(unit => unit.Sections).SelectMany(section => section.Variables).Select(variable => variable.Type is ArrayTypeSyntax array ? array.Element : variable.Type).OfType<NamedTypeSyntax>().Select(type => type.Name.Text),
            StringComparer.OrdinalIgnoreCase);
        UnitSyntax[] outermost = [.. units.Where(unit => !used.Contains(unit.Name.Text))];
        return outermost.Length == 1 ? outermost[0] : null;
    }

    private static string Fault(ReadingOptions options, ProgramInstanceSyntax[] programs, UnitSyntax[] units) =>
        options.Unit is not null ? $"there is no PROGRAM or FUNCTION_BLOCK `{options.Unit}`"
        : programs.Length == 1 ? $"there is no PROGRAM `{programs[0].Type}`"
        : programs.Length > 1 ? "the configuration runs more than one program"
        : units.Length == 0 ? "there is no PROGRAM and no FUNCTION_BLOCK"
        : "there is more than one PROGRAM or outermost FUNCTION_BLOCK";

    private static int? Scan(
        SourceFileSyntax file, ReadingOptions options, ConfigurationSyntax[] configurations, ProgramInstanceSyntax[] programs, DiagnosticBag diagnostics)
    {
        TaskSyntax[] tasks = [.. configurations.SelectMany(configuration => configuration.Tasks)];
        TaskSyntax? task = programs is [{ Task: { } name }]
            ? tasks.FirstOrDefault(one => string.Equals(one.Name.Text, name.Text, StringComparison.OrdinalIgnoreCase))
            : tasks.Length == 1 ? tasks[0] : null;
        if (programs is [{ Task: { } missing }] && task is null)
        {
            diagnostics.Add(StructuredTextDiagnostics.NoScanPeriod(missing.Span, $"there is no task `{missing}`"));
            return null;
        }

        if (task is null)
        {
            if (options.ScanMilliseconds is null)
            {
                diagnostics.Add(StructuredTextDiagnostics.NoScanPeriod(file.Source.At(0, 0), "no task is declared and none was given"));
            }

            return options.ScanMilliseconds;
        }

        ExpressionSyntax? interval = task.Arguments.FirstOrDefault(one => string.Equals(one.Name?.Text, "INTERVAL", StringComparison.OrdinalIgnoreCase))?.Value;
        if (interval is DurationLiteralSyntax { Milliseconds: > 0 and <= int.MaxValue } period && decimal.IsInteger(period.Milliseconds))
        {
            return (int)period.Milliseconds;
        }

        diagnostics.Add(StructuredTextDiagnostics.NoScanPeriod(task.Span, $"task `{task.Name}` has no INTERVAL of whole milliseconds"));
        return null;
    }
}
