using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Simulation.Metadata;

namespace Sequencer.Sites.Scenarios;

/// <summary>
/// Tells the simulation what the checked programs say of their signals, steps and reagents; what only
/// the site's own file says (limits on the discharge) is handed in.
/// </summary>
public static class SimulationMetadata
{
    /// <param name="programs">the site's checked programs</param>
    /// <param name="meaningHash">the hash of their meaning, as printed everywhere</param>
    /// <param name="limits">what the site may discharge</param>
    public static SiteMetadata Of(SiteProgram programs, string meaningHash, ImmutableArray<DischargeLimit> limits) => new(programs.Name, meaningHash)
    {
        Signals = [.. programs.Units.SelectMany(unit => Signals(unit, programs.ScanMilliseconds).Concat(RecordSignals(unit, programs.ScanMilliseconds)))],
        Steps = [.. programs.Units.SelectMany(Steps)],
        Prompts = [.. programs.Units.SelectMany(Prompts)],
        Records = [.. programs.Units.SelectMany(Records)],
        Reagents = [.. programs.Units.SelectMany(Reagents)],
        PutValues = programs.Units.SelectMany(unit => unit.Calibrations).ToImmutableDictionary(
            calibration => $"{calibration.Input.Tag}.put",
            calibration => new SignalMetadata(
                $"{calibration.Input.Tag}.put", SignalKind.Other, calibration.Input.Unit.Symbol, InUnit(calibration.Input.Resolution, calibration.Input.Unit), $"Put in place of {calibration.Input.Tag}")),
        Reals = [.. programs.Units.SelectMany(unit => unit.Reals.Select(real => new RealMetadata(
            programs.NameOf(unit, $"{real.Name}.real"), real.Input.Tag, real.Input.Minimum, real.Input.Maximum)))],
        DischargeLimits = limits,
        Marks = [.. programs.Units.SelectMany(Marks).Distinct()],
        Convert = UnitConversions.Convert,
    };

    private static IEnumerable<SignalMetadata> Signals(UnitProgram unit, int scanMilliseconds)
    {
        foreach (AnalogueInput input in unit.AnalogueInputs)
        {
            yield return new SignalMetadata(input.Tag, SignalKind.Analogue, input.Unit.Symbol, InUnit(input.Resolution, input.Unit), input.Description);
        }

        foreach (SwitchInput input in unit.SwitchInputs)
        {
            yield return new SignalMetadata(input.Tag, SignalKind.Switch, "", 1, input.Description);
        }

        foreach (Output output in unit.Outputs)
        {
            yield return new SignalMetadata(output.Tag, SignalKind.Output, "", 1, output.Description);
            if (output.Delivery is Delivery delivery)
            {
                decimal scan = ToDecimal(QuantityMeasure.VolumeOfAScan(output, scanMilliseconds));
                yield return new SignalMetadata(output.Tag + ".total", SignalKind.Total, "L", scan, $"{delivery.Reagent.Name} given this batch");
            }
        }

        foreach (AnalogueOutput output in unit.AnalogueOutputs)
        {
            yield return new SignalMetadata(output.Tag, SignalKind.Setpoint, output.Unit.Symbol, InUnit(output.Resolution, output.Unit), output.Description)
            {
                Range = (output.Minimum, output.Maximum),
            };
        }

        foreach (Count count in unit.Counts)
        {
            yield return new SignalMetadata($"{unit.Name}.{count.Name}", SignalKind.Count, count.Unit.Symbol, InUnit(count.Resolution, count.Unit), count.Description);
        }

        foreach (Parameter parameter in unit.Parameters)
        {
            decimal resolution = InUnit(parameter.Resolution, parameter.Unit);
            yield return new SignalMetadata(
                $"{unit.Name}.{parameter.Name}", SignalKind.Parameter, parameter.Unit.Symbol, resolution, parameter.Description, parameter.Default * resolution);
        }
    }

    private static IEnumerable<SignalMetadata> RecordSignals(UnitProgram unit, int scanMilliseconds) =>
        from step in unit.Steps
        from record in RecordAction.Of(step)
        select RecordSignal(unit, step, record.Record, record.Number, scanMilliseconds);

    private static IEnumerable<StepMetadata> Steps(UnitProgram unit) => unit.Steps.Select(step => new StepMetadata(
        unit.Name,
        step.Number.ToString(CultureInfo.InvariantCulture),
        step.Title,
        step.Expected?.Milliseconds / 1000.0,
        step.Limit.Time.Milliseconds / 1000.0));

    private static IEnumerable<PromptMetadata> Prompts(UnitProgram unit) => unit.Steps.SelectMany(step => step.Actions).OfType<PromptAction>()
        .Select(prompt => new PromptMetadata(unit.Name, $"{unit.Name}.{prompt.Name}", prompt.Question, prompt.Role, prompt.Answers));

    private static IEnumerable<RecordMetadata> Records(UnitProgram unit)
    {
        foreach (Step step in unit.Steps)
        {
            foreach ((RecordAction record, int number) in RecordAction.Of(step))
            {
                string variable = RecordVariable(unit, step, number);
                yield return new RecordMetadata(unit.Name, step.Number.ToString(CultureInfo.InvariantCulture), record.Title, variable, $"{variable}.taken");
            }
        }
    }

    private static string RecordVariable(UnitProgram unit, Step step, int number) =>
        FormattableString.Invariant($"{unit.Name}.step{step.Number}.record{number}");

    private static SignalMetadata RecordSignal(UnitProgram unit, Step step, RecordAction record, int number, int scanMilliseconds)
    {
        Unit shown = record.Value switch
        {
            ReadingQuantity reading => reading.Input.Unit,
            ParameterQuantity parameter => parameter.Parameter.Unit,
            _ => UnitTable.Find("L") ?? throw new InvalidOperationException("there is no litre"),
        };
        decimal resolution = InUnit(QuantityMeasure.Resolution(record.Value, scanMilliseconds), shown);
        return new SignalMetadata(RecordVariable(unit, step, number), SignalKind.Other, shown.Symbol, resolution, record.Title);
    }

    private static IEnumerable<ReagentMetadata> Reagents(UnitProgram unit)
    {
        foreach (Output output in unit.Outputs)
        {
            if (output.Delivery is Delivery delivery)
            {
                yield return new ReagentMetadata(output.Tag, delivery.Reagent.Name, (delivery.LitresPerSecond * 60).ToDouble());
            }
        }
    }

    /// <summary>What doses steer toward, to be drawn across the trend of their signal.</summary>
    private static IEnumerable<TrendMark> Marks(UnitProgram unit)
    {
        foreach (DoseAction dose in unit.Steps.SelectMany(step => step.Actions).OfType<DoseAction>())
        {
            TrendMark? mark = dose.Target switch
            {
                ParameterQuantity target => new TrendMark(dose.Signal.Tag, target.Parameter.Name, (double)(target.Parameter.Default * InUnit(target.Parameter.Resolution, target.Parameter.Unit))),
                LiteralQuantity literal => new TrendMark(dose.Signal.Tag, "target", (double)InUnit(literal.Value, dose.Signal.Unit)),
                _ => null,
            };
            if (mark is not null)
            {
                yield return mark;
            }
        }
    }

    internal static decimal InUnit(Rational baseUnits, Unit unit) => ToDecimal(baseUnits / unit.Factor);

    /// <summary>To the 28 figures of a decimal; exact for what a person writes.</summary>
    private static decimal ToDecimal(Rational value) => (decimal)value.Numerator / (decimal)(BigInteger)value.Denominator;
}
