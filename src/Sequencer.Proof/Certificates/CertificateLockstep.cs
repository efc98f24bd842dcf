using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Holds the text of a certificate against the interpreter, scan by scan: next states, requirement,
/// assumptions and invariant must have the same values. Writer and checker share the translation, so
/// only this would show a mistake in it.
/// </summary>
internal sealed class CertificateLockstep
{
    private const int Runs = 32;
    private const int ScansInRun = 6;

    private readonly SmtEvaluator _text;
    private readonly Interpreter _system;
    private readonly ImmutableArray<(int Observed, string Name, int Place)> _observed;
    private readonly ImmutableArray<(int State, string Name, int Place)> _next;
    private readonly ImmutableArray<(int State, int Place)> _states;
    private readonly ImmutableArray<(int Input, int Place)> _inputs;
    private readonly ImmutableArray<SmtTerm> _initial;
    private readonly ImmutableHashSet<string> _defined;
    private readonly TellingValues _values;

    public CertificateLockstep(
        TransitionSystem system,
        Requirement requirement,
        ImmutableArray<Assumption> leanedOn,
        Expression invariant,
        ImmutableArray<SmtTerm> commands)
    {
        _text = new SmtEvaluator(commands);
        _defined = [.. commands.Where(static command => command.Items is [{ Atom: "define-fun" }, ..]).Select(static command => command.Items[1].Atom ?? string.Empty)];
        _system = new Interpreter(Stepped(system), [requirement.Holds, invariant, .. leanedOn.Select(assumption => assumption.Holds)]);
        _values = new TellingValues([.. _system.ObservedExpressions, .. _system.System.States.Select(state => state.Next)]);
        string[] observed =
        [
            CertificateNames.Required,
            CertificateNames.Found,
            .. leanedOn.Select((_, index) => FormattableString.Invariant($"{CertificateNames.Assumption}{index + 1}")),
        ];
        _observed = [.. observed.Select((name, index) => (index, name, _text.PlaceOf(name) ?? throw new InvalidOperationException($"the text does not define {name}")))];
        _initial = FirstObligation(commands);
        _states = Places(system.States.Select(state => state.Variable.Name), _text);
        _inputs = Places(system.Inputs.Select(input => input.Name), _text);
        string[] names = [.. system.States.Select(state => $"{state.Variable.Name}'")];
        _next = [.. Places(names, _text).Where(state => _defined.Contains($"|{names[state.Index]}|")).Select(state => (state.Index, names[state.Index], state.Place))];
    }

    /// <summary>The system with those of its next values that the text defines; the other states stay as they are, unseen.</summary>
    private TransitionSystem Stepped(TransitionSystem system) => Stepped(system, state => _defined.Contains($"|{state.Variable.Name}'|"));

    /// <summary>The system with those of its next values that are wanted.</summary>
    internal static TransitionSystem Stepped(TransitionSystem system, Func<StateVariable, bool> wanted)
    {
        ExpressionBuilder build = new();
        return TransitionSystem.Create(
            system.Name,
            system.ScanMilliseconds,
            system.Inputs,
            [.. system.States.Select(state => wanted(state) ? state : state with { Next = build.Variable(state.Variable) })],
            [],
            [],
            [],
            [],
            []);
    }

    /// <summary>Empty if text and system agree in all scans tried, else what differs.</summary>
    public string FirstDifference()
    {
        for (int run = 0; run < Runs; run++)
        {
            _system.Initialise();
            if (run == 0 && InitialDifference() is { Length: > 0 } initial)
            {
                return initial;
            }

            for (int scan = 0; scan < ScansInRun; scan++)
            {
                // Runs from the start rarely come far, so most start anywhere within the ranges.
                if (scan == 0 && run > 0)
                {
                    _system.SetStates(_values.Drawn(_system.States.Length, index => _system.System.States[index].Variable.Range));
                }

                _values.Fill(_system.Inputs, index => _system.System.Inputs[index].Range);
                if (ScanDifference() is { Length: > 0 } difference)
                {
                    return difference;
                }
            }
        }

        return string.Empty;
    }

    /// <summary>What the text asserts of initial states, before it denies the invariant.</summary>
    internal static ImmutableArray<SmtTerm> FirstObligation(ImmutableArray<SmtTerm> commands) =>
    [
        .. commands.SkipWhile(static command => command.Items is not [{ Atom: "push" }, ..])
            .Skip(1)
            .TakeWhile(static command => command.Items is [{ Atom: "assert" }, { Items: [{ Atom: "=" }, ..] }])
            .Select(static command => command.Items[1]),
    ];

    private string InitialDifference()
    {
        SetStates();
        SmtTerm? wrong = _initial.FirstOrDefault(term => _text.Evaluate(term) != 1);
        return wrong is null ? string.Empty : $"the text says of the initial state {SmtText.Term(wrong)}, which is not so";
    }

    private string ScanDifference()
    {
        SetStates();
        foreach ((int input, int place) in _inputs)
        {
            _text[place] = _system.Inputs[input];
        }

        _text.Run();
        _system.Step();
        return FirstDifference(_observed, _system.Observed) ?? FirstDifference(_next, _system.States) ?? string.Empty;
    }

    private string? FirstDifference(ImmutableArray<(int Index, string Name, int Place)> expected, ReadOnlySpan<long> values)
    {
        foreach ((int index, string name, int place) in expected)
        {
            if (_text[place] != values[index])
            {
                return FormattableString.Invariant($"the text gives |{name}| the value {_text[place]} in a scan in which the system gives it {values[index]}");
            }
        }

        return null;
    }

    private void SetStates()
    {
        foreach ((int state, int place) in _states)
        {
            _text[place] = _system.States[state];
        }
    }

    private static ImmutableArray<(int Index, int Place)> Places(IEnumerable<string> names, SmtEvaluator text) =>
        [.. names.Select((name, index) => (Index: index, Place: text.PlaceOf(name))).Where(pair => pair.Place is not null).Select(pair => (pair.Index, pair.Place!.Value))];
}
