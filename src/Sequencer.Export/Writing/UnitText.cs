using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>
/// What the writers of one function block share: the program, the names, the variables declared so far
/// and the text of the body. A variable is declared where it is first needed and listed above the body.
/// </summary>
internal sealed class UnitText
{
    private readonly List<Declaration> _declarations = [];
    private readonly HashSet<string> _declared = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<int, (string Branch, string Value)> _places = [];

    public UnitText(UnitProgram unit, SiteProgram site, TextDialect dialect)
    {
        Unit = unit;
        Dialect = dialect;
        ScanMilliseconds = site.ScanMilliseconds;
        Seen = new SeenUnits(this, site);
        Regions = StepRegions.Of(unit);
        Conditions = new ConditionText(this);
        ReserveNames();
    }

    public UnitProgram Unit { get; }

    public TextDialect Dialect { get; }

    public int ScanMilliseconds { get; }

    public Names Names { get; } = new();

    public TextLines Body { get; } = new();

    public SeenUnits Seen { get; }

    public ConditionText Conditions { get; }

    public IReadOnlyList<IReadOnlyList<Step>> Regions { get; }

    public IReadOnlyList<Declaration> Declarations => _declarations;

    /// <summary>The state that the steps of a branch work in.</summary>
    public ProceduralState StateOf(int region) => Regions[region][0].State;

    /// <summary>The branches of the steps that work in a state.</summary>
    public IEnumerable<int> RegionsOf(ProceduralState state) => Enumerable.Range(0, Regions.Count).Where(region => StateOf(region) == state);

    /// <summary>What the steps of the batch keep through a loss of power, those of a section lose.</summary>
    public static VariableSection Memory(Step step) => step.IsOfBatch ? VariableSection.Retained : VariableSection.Kept;

    /// <summary>The unit is in the state that the step works in, and the step has what it claims.</summary>
    public string Works(Step step) => step.Claims.IsEmpty ? InState(step) : $"({InState(step)} AND {ClaimText.Owns(this, step)})";

    /// <summary>The unit is in the state that the step works in.</summary>
    public static string InState(Step step) => $"(State_Now = {StateText.Value(step.State)})";

    /// <summary>No step that works in the state was active at the start of the scan.</summary>
    public string NoneAtStart(ProceduralState state) => Resting(state, "");

    /// <summary>No step that works in the state is active after the transitions of this scan.</summary>
    public string NoneNow(ProceduralState state) => Resting(state, "_Now");

    public string BlockName => NameOfBlock(Unit);

    public static string NameOfBlock(UnitProgram unit) => $"FB_{unit.Name}";

    /// <summary>The type of a variable that holds a step of the unit.</summary>
    public string StepType => Dialect.Type(StepTypeName, Unit.Steps.Max(step => step.Number));

    public string StepTypeName => $"STEP_OF_{Unit.Name}";

    public static string Branch(int region) => FormattableString.Invariant($"Branch{region + 1}");

    public string StepValue(Step step) => FormattableString.Invariant($"{Unit.Name}_S{step.Number}_{Words(step.Title)}");

    public string NoStep => $"{Unit.Name}_NO_STEP";

    /// <summary>What a branch's variable holds while the step is active.</summary>
    public int StepNumber(Step step) => Dialect.States == StateForm.Integer ? step.Number : Unit.Steps.TakeWhile(one => one.Number != step.Number).Count() + 1;

    /// <summary>The step as the label of a CASE.</summary>
    public string StepLabel(Step step) => Dialect.Label(StepValue(step), StepNumber(step));

    /// <summary>The states as labels of a CASE.</summary>
    public string StateLabel(params IEnumerable<ProceduralState> states) =>
        string.Join(", ", states.Select(state => Dialect.Label(StateText.Value(state), (int)state)));

    /// <summary>Declares a variable once and gives its name back.</summary>
    public string Declare(VariableSection section, string path, string type, string? initial, string comment)
    {
        string name = Names.Of(path);
        if (_declared.Add(name))
        {
            _declarations.Add(new Declaration(section, name, type, initial, comment, path));
        }

        return name;
    }

    /// <summary>Whether a variable of this path has been declared.</summary>
    public bool IsDeclared(string path) => Names.ByPath.TryGetValue(path, out string? name) && _declared.Contains(name);

    public string Flag(VariableSection section, string path, string comment, bool initial = false) =>
        Declare(section, path, "BOOL", initial ? "TRUE" : "FALSE", comment);

    /// <summary>A whole number that stays in a range.</summary>
    public string Number(VariableSection section, string path, long low, long high, long initial, string comment) =>
        Declare(section, path, Range(low, high), FormattableString.Invariant($"{initial}"), comment);

    /// <summary>A count from 0 to a limit.</summary>
    public string Counter(VariableSection section, string path, long limit, string comment, long initial = 0) =>
        Number(section, path, 0, limit, initial, comment);

    /// <summary>A subrange type.</summary>
    public static string Range(long low, long high) => FormattableString.Invariant($"DINT({low}..{high})");

    public string Scratch(string path, string type = "BOOL") => Declare(VariableSection.Temporary, path, type, null, "");

    /// <summary>The step was active at the start of the scan.</summary>
    public string StepAtStart(int step) => $"({_places[step].Branch} = {_places[step].Value})";

    /// <summary>The step is active after the transitions of this scan.</summary>
    public string StepNow(int step) => $"({_places[step].Branch}_Now = {_places[step].Value})";

    public (string Branch, string Value) Place(int step) => _places[step];

    public string Entered(int step) => Scratch(FormattableString.Invariant($"step{step}.entered"));

    public string Met(OrderedTransition transition) => Scratch($"{transition.Name}.met");

    public Step StepOf(int number) => Unit.Steps.First(step => step.Number == number);

    public long Scans(Language.Units.Duration duration) => duration.Scans(ScanMilliseconds);

    /// <summary>One line that counts a variable up to a limit.</summary>
    public static string CountUp(string counter, long limit) =>
        FormattableString.Invariant($"IF {counter} < {limit} THEN {counter} := {counter} + 1; END_IF;");

    public static string Bracketed(IEnumerable<string> terms, string operation, string none)
    {
        string[] parts = [.. terms];
        return parts.Length switch
        {
            0 => none,
            1 => parts[0],
            _ => $"({string.Join($" {operation} ", parts)})",
        };
    }

    private string Resting(ProceduralState state, string when) =>
        Bracketed(RegionsOf(state).Select(region => $"({Branch(region)}{when} = {NoStep})"), "AND", "TRUE");

    private static string Words(string title)
    {
        string[] words =
        [
            .. title.Split(' ').Select(word => new string([.. word.Where(char.IsAsciiLetterOrDigit)]).ToUpperInvariant())
                .Where(word => word.Length > 0),
        ];
        return words.Length == 0 ? "STEP" : string.Join('_', words);
    }

    /// <summary>The names that a reviewer knows come first, so that nothing else takes them.</summary>
    private void ReserveNames()
    {
        foreach (string tag in Unit.Outputs.Select(output => output.Tag)
            .Concat(Unit.AnalogueOutputs.Select(output => output.Tag))
            .Concat(Unit.AnalogueInputs.Select(input => input.Tag))
            .Concat(Unit.SwitchInputs.Select(input => input.Tag)))
        {
            Names.Of(tag);
        }

        for (int region = 0; region < Regions.Count; region++)
        {
            string branch = Names.Of(Branch(region));
            Names.Of($"{branch}.now");
            foreach (Step step in Regions[region])
            {
                _places[step.Number] = (branch, StepValue(step));
            }
        }
    }
}
