using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering.Supposing;
using Sequencer.Text;

namespace Sequencer.Lowering.Tests;

/// <summary>
/// A program on the interpreter, played by the names of its variables; one scan is 100 ms. Facts,
/// alarms and outputs have the values of the last scan, states those after it.
/// </summary>
internal sealed class ProgramBench
{
    private readonly Interpreter _interpreter;
    private readonly Dictionary<string, int> _observed = new(StringComparer.Ordinal);

    /// <param name="programs">One program a unit, in the order of the site.</param>
    public ProgramBench(params string[] programs)
        : this(Supposition.Nothing, programs)
    {
    }

    /// <param name="supposed">What is supposed of the site that is not so.</param>
    /// <param name="programs">One program a unit, in the order of the site.</param>
    public ProgramBench(Supposition supposed, params string[] programs)
    {
        SiteCheckResult result = SiteChecker.Check([.. programs.Select((program, index) => new SourceText($"bench{index}.seq", program))], 100);
        ImmutableArray<UnitProgram> units = result.Units.Length == programs.Length
            ? result.Units
            : throw new ArgumentException(string.Join('\n', result.Diagnostics.Select(diagnostic => $"{diagnostic.Code} {diagnostic.Span}: {diagnostic.Message}")));
        TransitionSystem system = SiteLowering.Lower(new SiteProgram("bench", 100, units), supposed);
        List<Expression> observed = [];
        foreach ((string name, Expression value) in system.Definitions.Select(definition => (definition.Name, definition.Value))
            .Concat(system.Alarms.Select(alarm => ("alarm " + alarm.Name, alarm.Raised)))
            .Concat(system.Requirements.Select(requirement => (requirement.Name, requirement.Holds)))
            .Concat(system.Assumptions.Select(assumption => (assumption.Name, assumption.Holds))))
        {
            _observed[name] = observed.Count;
            observed.Add(value);
        }

        _interpreter = new Interpreter(system, [.. observed]);
        foreach (UnitProgram unit in units)
        {
            foreach (Parameter parameter in unit.Parameters)
            {
                Set($"{unit.Name}.{parameter.Name}.setting", parameter.Default);
            }
        }
    }

    /// <summary>An output, a state, a fact or, as <c>alarm NAME</c>, an alarm.</summary>
    public long this[string name]
    {
        get
        {
            TransitionSystem system = _interpreter.System;
            int place = IndexOf(system.Outputs.Select(output => output.Name), name);
            if (place >= 0)
            {
                return _interpreter.Outputs[place];
            }

            place = IndexOf(system.States.Select(state => state.Variable.Name), name);
            return place >= 0 ? _interpreter.States[place] : _interpreter.Observed[_observed[name]];
        }
    }

    /// <summary>States that nothing depends on are left out of a system.</summary>
    public bool Knows(string state) => _interpreter.System.States.Any(variable => variable.Variable.Name == state);

    public ProceduralState State => (ProceduralState)this["U.state"];

    public void Set(string input, long value)
    {
        int place = IndexOf(_interpreter.System.Inputs.Select(variable => variable.Name), input);
        _interpreter.Inputs[place >= 0 ? place : throw new ArgumentException($"no input {input}")] = value;
    }

    /// <summary>Something else than the program writes a state, between two scans.</summary>
    public void Corrupt(string state, long value)
    {
        int place = IndexOf(_interpreter.System.States.Select(variable => variable.Variable.Name), state);
        _interpreter.SetState(place >= 0 ? place : throw new ArgumentException($"no state {state}"), value);
    }

    public ProgramBench Scan(int scans = 1)
    {
        for (int scan = 0; scan < scans; scan++)
        {
            _interpreter.Step();
        }

        return this;
    }

    public TransitionSystem System => _interpreter.System;

    /// <summary>One scan in which the buttons are newly pressed; they are let go before the next.</summary>
    public ProgramBench Press(params string[] commands) => PressAt("U", commands);

    /// <summary>The same for a unit of several.</summary>
    public ProgramBench PressAt(string unit, params string[] commands)
    {
        foreach (string command in commands)
        {
            Set($"{unit}.{command}", 1);
        }

        Scan();
        foreach (string command in commands)
        {
            Set($"{unit}.{command}", 0);
        }

        return this;
    }

    /// <summary>One scan after a loss of power.</summary>
    public ProgramBench LosePower()
    {
        Set("power.returned", 1);
        Scan();
        Set("power.returned", 0);
        return this;
    }

    private static int IndexOf(IEnumerable<string> names, string name) => names.Select((each, index) => (each, index))
        .Where(pair => pair.each == name).Select(pair => pair.index).DefaultIfEmpty(-1).First();
}
