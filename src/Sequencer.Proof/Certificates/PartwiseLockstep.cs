using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Holds each question of a certificate that asks part by part against the interpreter, as <see cref="CertificateLockstep"/> does with the other
/// layout: the next values that it equates, the part of the requirement that it asks for, and the facts of the invariant. The states that the
/// invariant gives have the values that the text gives them.
/// </summary>
internal sealed class PartwiseLockstep
{
    private const int Scans = 12;

    private readonly Interpreter _system;
    private readonly TellingValues _values;
    private readonly SmtEvaluator _invariant;
    private readonly ImmutableArray<Question> _questions;
    private readonly ImmutableArray<(int Index, string Name)> _states;
    private readonly ImmutableArray<(int Index, string Name)> _given;
    private readonly ImmutableArray<(int Observed, string Name)> _facts;
    private readonly ImmutableArray<SmtDefinition> _initial;

    /// <param name="system">The system that the text is about.</param>
    /// <param name="reader">What was read of the invariant.</param>
    /// <param name="asked">The questions but the first, as the system gives them.</param>
    /// <param name="commands">The text.</param>
    public PartwiseLockstep(TransitionSystem system, InvariantPartReader reader, ImmutableArray<CertificateClaim[]> asked, ImmutableArray<SmtTerm> commands)
    {
        HashSet<Variable> stepped = [.. asked.SelectMany(claims => claims).SelectMany(claim => claim.Stepped)];
        Expression[] required = [.. asked.SelectMany(claims => claims).Select(claim => claim.Now).OfType<Expression>()];
        _system = new Interpreter(CertificateLockstep.Stepped(system, state => stepped.Contains(state.Variable)), [.. reader.Facts, .. required]);
        _values = new TellingValues([.. _system.ObservedExpressions, .. _system.System.States.Select(state => state.Next)]);
        _states = [.. system.States.Select(state => (state.Variable.Index, state.Variable.Name))];
        _given = [.. reader.Parts.Select(part => part.Given).OfType<Variable>().Select(state => (state.Index, state.Name))];
        _facts = [.. reader.Parts.Select((part, index) => (part, index)).Where(part => part.part.Given is null).Select(part => (part.index, part.part.Whole.Name))];
        _initial = [.. CertificateLockstep.FirstObligation(commands).Select((term, index) => new SmtDefinition(FormattableString.Invariant($"#initial{index}"), Sort.Boolean, term))];
        _invariant = new SmtEvaluator([.. commands.TakeWhile(static command => !Is(command, "push")), .. _initial.Select(Defined)]);
        int observed = reader.Facts.Length;
        List<Question> questions = [];
        foreach ((ImmutableArray<SmtTerm> question, CertificateClaim[] claims) in Asked(commands).Zip(asked))
        {
            int parts = claims.Count(claim => claim.Now is not null);
            questions.Add(new Question(system, question, claims, [.. Enumerable.Range(observed, parts)]));
            observed += parts;
        }

        _questions = [.. questions];
    }

    /// <summary>Empty if text and system agree in all scans tried, else what differs.</summary>
    public string FirstDifference()
    {
        for (int scan = 0; scan < Scans; scan++)
        {
            _system.Initialise();
            if (scan == 0)
            {
                Take(_invariant, _states, _system.States);
                _invariant.Run();
                if (_initial.FirstOrDefault(term => _invariant[_invariant.PlaceOf(term.Name)!.Value] != 1) is { } wrong)
                {
                    return $"the text says of the initial state {SmtText.Term(wrong.Body)}, which is not so";
                }
            }
            else
            {
                _system.SetStates(_values.Drawn(_system.States.Length, index => _system.System.States[index].Variable.Range));
            }

            _values.Fill(_system.Inputs, index => _system.System.Inputs[index].Range);
            if (ScanDifference() is { Length: > 0 } difference)
            {
                return difference;
            }
        }

        return string.Empty;
    }

    private string ScanDifference()
    {
        Take(_invariant, [.. _states.Except(_given)], _system.States);
        _invariant.Run();
        foreach ((int index, string name) in _given)
        {
            _system.SetState(index, (long)_invariant[_invariant.PlaceOf(name)!.Value]);
        }

        foreach (Question question in _questions)
        {
            question.Take(_system);
        }

        _system.Step();
        string? fact = _facts.Select(fact => Difference(fact.Name, _invariant[_invariant.PlaceOf(fact.Name)!.Value], _system.Observed[fact.Observed])).FirstOrDefault(said => said.Length > 0);
        return fact ?? _questions.Select(question => question.Difference(_system)).FirstOrDefault(said => said.Length > 0) ?? string.Empty;
    }

    private static string Difference(string name, Int128 said, long value) =>
        said == value ? string.Empty : FormattableString.Invariant($"the text gives |{name}| the value {said} in a scan in which the system gives it {value}");

    private static void Take(SmtEvaluator text, ImmutableArray<(int Index, string Name)> variables, ReadOnlySpan<long> values)
    {
        foreach ((int index, string name) in variables)
        {
            if (text.PlaceOf(name) is { } place)
            {
                text[place] = values[index];
            }
        }
    }

    private static SmtTerm Defined(SmtDefinition definition) =>
        SmtTerm.Apply("define-fun", SmtTerm.Name(definition.Name), SmtTerm.List([]), SmtTerm.Word(SmtText.SortName(definition.Sort)), definition.Body);

    private static bool Is(SmtTerm command, string word) => command.Items is [{ Atom: { } atom }, ..] && atom == word;

    /// <summary>What stands between the brackets of each question but the first.</summary>
    private static IEnumerable<ImmutableArray<SmtTerm>> Asked(ImmutableArray<SmtTerm> commands)
    {
        List<SmtTerm>? question = null;
        int number = 0;
        foreach (SmtTerm command in commands)
        {
            if (Is(command, "push"))
            {
                question = [];
                number++;
            }
            else if (Is(command, "pop") && question is not null)
            {
                if (number > 1)
                {
                    yield return [.. question];
                }

                question = null;
            }
            else
            {
                question?.Add(command);
            }
        }
    }

    /// <summary>One question's text, run beside the interpreter.</summary>
    private sealed class Question
    {
        private const string Asked = "#asked";

        private readonly SmtEvaluator _text;
        private readonly ImmutableArray<(int Index, string Name)> _inputs;
        private readonly ImmutableArray<(int Index, string Name)> _states;
        private readonly ImmutableArray<(int Index, string Name, int Place)> _next;
        private readonly ImmutableArray<int> _required;
        private readonly int _asked;

        public Question(TransitionSystem system, ImmutableArray<SmtTerm> commands, CertificateClaim[] claims, ImmutableArray<int> required)
        {
            SmtTerm denied = commands.Last(static command => Is(command, "assert")).Items[1].Items[1];
            _text = new SmtEvaluator([.. Definitions(commands), Defined(new SmtDefinition(Asked, Sort.Boolean, denied))]);
            _required = required;
            _asked = _text.PlaceOf(Asked)!.Value;
            _inputs = [.. system.Inputs.Select(input => (input.Index, input.Name)).Where(input => _text.PlaceOf(input.Name) is not null)];
            _states = [.. system.States.Select(state => (state.Variable.Index, state.Variable.Name)).Where(state => _text.PlaceOf(state.Name) is not null)];
            _next = [.. claims.SelectMany(claim => claim.Stepped).Distinct().Select(state => (state.Index, $"{state.Name}'", _text.PlaceOf($"{state.Name}'")!.Value))];
        }

        public void Take(Interpreter system)
        {
            PartwiseLockstep.Take(_text, _inputs, system.Inputs);
            PartwiseLockstep.Take(_text, _states, system.States);
            _text.Run();
        }

        public string Difference(Interpreter system)
        {
            string? next = _next.Select(state => PartwiseLockstep.Difference(state.Name, _text[state.Place], system.States[state.Index])).FirstOrDefault(said => said.Length > 0);
            return next ?? (_required.IsEmpty ? string.Empty
                : PartwiseLockstep.Difference("a part of the requirement", _text[_asked], _required.All(place => system.Observed[place] == 1) ? 1 : 0));
        }

        /// <summary>An equation behind the declaration of its name is the name's definition.</summary>
        private static IEnumerable<SmtTerm> Definitions(ImmutableArray<SmtTerm> commands)
        {
            for (int index = 0; index < commands.Length; index++)
            {
                if (Is(commands[index], "define-fun"))
                {
                    yield return commands[index];
                }
                else if (Is(commands[index], "declare-const"))
                {
                    (SmtTerm name, SmtTerm sort) = (commands[index].Items[1], commands[index].Items[2]);
                    yield return SmtTerm.Apply("define-fun", name, SmtTerm.List([]), sort, commands[index + 1].Items[1].Items[2]);
                }
            }
        }
    }
}
