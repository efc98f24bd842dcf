using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Text;

namespace Sequencer.Spec.Tests.Scans;

/// <summary>
/// The programs of an example on the interpreter, in the words of its table. Given: <c>start</c> and the other commands (of
/// the first unit, or <c>B.start</c>) for one scan; <c>S1 on</c>, <c>S1 off</c>; <c>LT1 4.50</c> in the unit of the input, other inputs as whole numbers; <c>LT1 bad</c>,
/// <c>LT1 good</c>; <c>power back</c>; <c>memory U.step10.active on</c>, <c>memory U.state Idle</c>: something else than the program writes there. Shown: <c>state</c>, <c>step 10</c>, an output, a reading's total, any variable or fact.
/// </summary>
internal sealed class PlayedProgram
{
    private const int ScanMilliseconds = 100;

    private readonly ImmutableArray<UnitProgram> _units;
    private readonly Interpreter _interpreter;
    private readonly Dictionary<string, (int Place, bool IsFlag)> _observed = new(StringComparer.Ordinal);
    private readonly List<int> _pressed = [];
    private int _scan;

    public PlayedProgram(ScanTable table)
    {
        SourceText[] texts = [.. table.Program.Split("language 1\n").Skip(1).Select((program, index) =>
            new SourceText(FormattableString.Invariant($"{table.Place} ({index + 1})"), "language 1\n" + program))];
        SiteCheckResult result = SiteChecker.Check(texts, ScanMilliseconds);
        Assert.True(result.Units.Length == texts.Length && result.Diagnostics.IsEmpty, DiagnosticRenderer.Render(result.Diagnostics));
        _units = result.Units;
        TransitionSystem system = SiteLowering.Lower(new SiteProgram("example", ScanMilliseconds, _units));
        List<Expression> observed = [];
        foreach ((string name, Expression value) in system.Definitions.Select(definition => (definition.Name, definition.Value))
            .Concat(system.Alarms.Select(alarm => ("alarm " + alarm.Name, alarm.Raised)))
            .Concat(system.Requirements.Select(requirement => (requirement.Name, requirement.Holds))))
        {
            _observed.TryAdd(name, (observed.Count, value.Sort == Sort.Boolean));
            observed.Add(value);
        }

        _interpreter = new Interpreter(system, [.. observed]);
        foreach ((UnitProgram unit, Parameter parameter) in _units.SelectMany(unit => unit.Parameters.Select(parameter => (unit, parameter))))
        {
            Input($"{unit.Name}.{parameter.Name}.setting", parameter.Default);
        }

        foreach (SwitchInput input in _units.SelectMany(unit => unit.SwitchInputs))
        {
            Input($"{input.Tag}.contact", input.NormallyClosed ? 1 : 0);
        }
    }

    /// <summary>Plays on to the scan, giving what is given in it.</summary>
    public void Play(ScanRow row)
    {
        while (++_scan < row.Scan)
        {
            Step();
        }

        foreach (string given in row.Given)
        {
            Give(given);
        }

        Step();
    }

    public string Show(string column)
    {
        string name = column.Replace("step ", "step", StringComparison.Ordinal);
        if (Value(name) is not var (value, isFlag))
        {
            throw new ArgumentException($"nothing is called {column}");
        }

        return name.EndsWith("state", StringComparison.Ordinal) && !isFlag && _units.Any(unit => name == "state" || name == $"{unit.Name}.state")
            ? ((ProceduralState)value).ToString()
            : isFlag ? (value != 0 ? "on" : "off") : value.ToString(CultureInfo.InvariantCulture);
    }

    private void Step()
    {
        _interpreter.Step();
        foreach (int input in _pressed)
        {
            _interpreter.Inputs[input] = 0;
        }

        _pressed.Clear();
    }

    private void Give(string given)
    {
        string[] words = given.Split(' ');
        switch (words)
        {
            case ["memory", var state, "on" or "off"]:
                Write(state, words[2] == "on" ? 1 : 0);
                break;
            case ["memory", var state, var value]:
                Write(state, (long)Enum.Parse<ProceduralState>(value));
                break;
            case ["power", "back"]:
                Press("power.returned");
                break;
            case [var command]:
                Press(command.Contains('.', StringComparison.Ordinal) ? command : $"{_units[0].Name}.{command}");
                break;
            case [var name, "bad" or "good"]:
                Input($"{name}.fault", words[1] == "bad" ? 1 : 0);
                break;
            case [var name, "on" or "off"] when _units.SelectMany(unit => unit.SwitchInputs).FirstOrDefault(input => input.Tag == name) is { } input:
                Input($"{name}.contact", words[1] == "on" != input.NormallyClosed ? 1 : 0);
                break;
            case [var name, "on" or "off"]:
                Input(name, words[1] == "on" ? 1 : 0);
                break;
            case [var name, var number] when _units.SelectMany(unit => unit.AnalogueInputs).FirstOrDefault(input => input.Tag == name) is { } reading:
                decimal steps = decimal.Parse(number, CultureInfo.InvariantCulture) / (decimal)(reading.Resolution / reading.Unit.Factor).ToDouble();
                Input(name, (long)decimal.Round(steps));
                break;
            case [var name, var number]:
                Input(name, long.Parse(number, CultureInfo.InvariantCulture));
                break;
            default:
                throw new ArgumentException($"what is given by {given}?");
        }
    }

    private void Write(string state, long value)
    {
        int place = _interpreter.System.States.Select(one => one.Variable.Name).ToList().IndexOf(state);
        _interpreter.SetState(place >= 0 ? place : throw new ArgumentException($"no state {state}"), value);
    }

    private void Press(string input)
    {
        Input(input, 1);
        _pressed.Add(Place(input));
    }

    private void Input(string name, long value)
    {
        if (_interpreter.System.Inputs.Any(input => input.Name == name))
        {
            _interpreter.Inputs[Place(name)] = value;
        }
        else
        {
            Assert.True(name.EndsWith(".setting", StringComparison.Ordinal) || name.EndsWith(".contact", StringComparison.Ordinal), $"there is no input {name}");
        }
    }

    private int Place(string input) => _interpreter.System.Inputs.Single(variable => variable.Name == input).Index;

    /// <summary>By its own name, or below the first unit; a step by whether it is active.</summary>
    private (long Value, bool IsFlag)? Value(string name)
    {
        TransitionSystem system = _interpreter.System;
        foreach (string full in new[] { name, $"{_units[0].Name}.{name}", name.Replace("alarm ", $"alarm {_units[0].Name}.", StringComparison.Ordinal), $"{name}.active", $"{_units[0].Name}.{name}.active", $"{name}.reading" })
        {
            if (system.Outputs.FirstOrDefault(output => output.Name == full) is { } output)
            {
                return (_interpreter.Outputs[system.Outputs.IndexOf(output)], output.Value.Sort == Sort.Boolean);
            }

            if (system.States.FirstOrDefault(state => state.Variable.Name == full) is { } state)
            {
                return (_interpreter.States[state.Variable.Index], state.Variable.Sort == Sort.Boolean);
            }

            if (_observed.TryGetValue(full, out (int Place, bool IsFlag) observed))
            {
                return (_interpreter.Observed[observed.Place], observed.IsFlag);
            }
        }

        return null;
    }
}
