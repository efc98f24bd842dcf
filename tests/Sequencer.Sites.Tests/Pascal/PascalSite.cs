using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Writing;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Testing;
using Sequencer.Testing.Pascal;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Pascal;

/// <summary>
/// A site's system and its exported text as a Pascal program, and which value of the one is which of the other: outputs, alarms, steps,
/// and every variable that the program keeps and the text has by the name of the export.
/// </summary>
internal sealed class PascalSite
{
    private const string Power = "power.returned";

    private readonly List<PascalValue> _inputs = [];
    private readonly List<int> _inputPlaces = [];
    private readonly List<(PascalValue Value, Expression Reference)> _results = [];
    private readonly ExportedBlock _block;
    private readonly PascalProgram _text;
    private readonly Dictionary<string, string> _names;

    /// <param name="folder">The site's.</param>
    /// <param name="change">What is done to the text before it is rewritten.</param>
    /// <param name="dialect">The forms of the text; null for the default.</param>
    public PascalSite(string folder, Func<string, string> change, TextDialect? dialect = null)
    {
        Site = SiteLoader.Load(new SiteFolder(RepositoryPath.Site(folder)), new DiagnosticBag()) ?? throw new InvalidOperationException($"{folder} does not check");
        StructuredTextExport export = ExportStage.Write(Site, dialect ?? TextDialect.Default);
        _block = Assert.Single(export.Blocks);
        _text = PascalRewriter.Rewrite(change(export.Text));
        _names = _block.Variables.DistinctBy(variable => variable.Path).ToDictionary(variable => variable.Path, variable => variable.Name, StringComparer.Ordinal);
        PairInputs();
        PairResults();
        ImmutableArray<Goal> goals = [.. System.Goals.Where(goal => !IsStep(goal))];
        Transitions = goals;
        Compiled = CompiledSystem.Compile(System, [.. _results.Select(result => result.Reference), .. goals.Select(goal => goal.Reached)]);
        Program = new LockstepProgram(_text, _block.FunctionBlock, System.ScanMilliseconds, Approaches.PlacesFor(goals.Length), [.. _inputs], [.. _results.Select(result => result.Value)]);
    }

    public LoadedSite Site { get; }

    /// <summary>With the obligations, as only that one has the transitions to be counted; the rest is the same.</summary>
    public TransitionSystem System => Site.ProofSystem;

    public CompiledSystem Compiled { get; }

    public LockstepProgram Program { get; }

    /// <summary>What the steppers of <see cref="Compiled"/> observe behind the results.</summary>
    public ImmutableArray<Goal> Transitions { get; }

    /// <summary>What the program keeps and no value of the text is known for.</summary>
    public List<string> Unpaired { get; } = [];

    /// <summary>The system's input for each of the Pascal program's.</summary>
    public IReadOnlyList<int> InputPlaces => _inputPlaces;

    public int PowerInput => System.Inputs.Single(input => input.Name == Power).Index;

    private static bool IsStep(Goal goal) => goal.Name.Count(letter => letter == '.') == 1;

    private void PairInputs()
    {
        foreach (Variable input in System.Inputs.Where(input => input.Name != Power))
        {
            string name = Name("", input.Name) ?? throw new InvalidOperationException($"the text has no input {input.Name}");
            Assert.True(_text.Find(_block.FunctionBlock, name)!.IsInput);
            _inputs.Add(new PascalValue(input.Name, InPascal(name), input.Sort == Sort.Boolean));
            _inputPlaces.Add(input.Index);
        }

        Assert.Equal(_inputs.Count, _text.Blocks[_block.FunctionBlock].Count(variable => variable.IsInput));
    }

    private void PairResults()
    {
        ExpressionBuilder build = new();
        foreach (OutputVariable output in System.Outputs)
        {
            Add(output.Name, Name("", output.Name), output.Value);
        }

        foreach (Alarm alarm in System.Alarms.Where(alarm => Name("alarm.", alarm.Name) is not null))
        {
            Add($"alarm {alarm.Name}", Name("alarm.", alarm.Name), alarm.Raised);
        }

        foreach (StateVariable state in System.States.Where(state => state.Purpose == StatePurpose.Control))
        {
            ExportedStep? step = _block.Steps.FirstOrDefault(step => state.Variable.Name == FormattableString.Invariant($"{step.Unit}.step{step.Number}.active"));
            if (step is not null)
            {
                string value = step.Value.ToString(CultureInfo.InvariantCulture);
                _results.Add((new PascalValue(state.Variable.Name, $"Ord(Ord({InPascal(step.Branch)}) = {value})", true), state.Next));
                continue;
            }

            bool known = Add(state.Variable.Name, Name("", state.Variable.Name), state.Next);
            foreach (ExportedVariable copy in _block.Copies.Where(copy => copy.Path == state.Variable.Name))
            {
                known |= Add($"{copy.Path} as others see it", copy.Name, state.Next);
            }

            if (!known)
            {
                Unpaired.Add(state.Variable.Name);
            }
        }

        // The numbers first: the order is that of the answer.
        _results.Sort((one, other) => one.Value.IsBoolean.CompareTo(other.Value.IsBoolean));

        bool Add(string name, string? path, Expression reference)
        {
            PascalVariable? found = path is null ? null : _text.Find(_block.FunctionBlock, path);
            if (found is null)
            {
                return false;
            }

            // The program counts the scans that a fact has lasted; the text has a timer for it.
            string pascal = found.Type.Kind != PascalKind.Block ? InPascal(path!)
                : string.Create(CultureInfo.InvariantCulture, $"ScansAsked({InPascal(path!)}, Scan, {reference.Range.Maximum})");
            _results.Add((new PascalValue(name, pascal, reference.Sort == Sort.Boolean), reference));
            return true;
        }
    }

    /// <summary>The text's name of a variable of the system: that of its path, or of its path below its unit.</summary>
    private string? Name(string kind, string name) =>
        _names.GetValueOrDefault(kind + name)
        ?? (name.StartsWith(_block.Unit + ".", StringComparison.Ordinal) ? _names.GetValueOrDefault(kind + name[(_block.Unit.Length + 1)..]) : null);

    private static string InPascal(string path) => string.Join('.', path.Split('.').Select(name => $"v_{name}"));
}
