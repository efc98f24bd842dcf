using System.Collections.Immutable;
using Sequencer.Control.Signals;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Writing;

namespace Sequencer.Export.Wiring;

/// <summary>Each signal of a site against what the text does between its address and the block.</summary>
internal sealed class PointCheck
{
    private const string PowerReturned = "power.returned";

    private readonly CalledBlock _called;
    private readonly TransitionSystem _program;
    private readonly ImmutableDictionary<string, string> _addresses;
    private readonly Dictionary<string, string> _names;
    private readonly Dictionary<Expression, string> _said = [];
    private readonly List<(string Name, Expression Same)> _open = [];

    /// <param name="called">The block in the program.</param>
    /// <param name="program">The program.</param>
    /// <param name="addresses">Of its inputs and outputs, by name.</param>
    /// <param name="block">What the block's variables stand for.</param>
    /// <param name="points">All signals of the site.</param>
    public PointCheck(CalledBlock called, TransitionSystem program, ImmutableDictionary<string, string> addresses, ExportedBlock block, ImmutableArray<WiredPoint> points)
    {
        _called = called;
        _program = program;
        _addresses = addresses;
        _names = block.Variables.DistinctBy(variable => variable.Path).ToDictionary(variable => variable.Path, variable => variable.Name, StringComparer.Ordinal);
        foreach (WiredPoint point in points.Where(point => point.Kind == PointKind.Coil))
        {
            if (Handed(point.Path) is { } said)
            {
                _said.TryAdd(said, point.Path);
                _said.TryAdd(called.Builder.Not(said), point.Path);
            }
        }
    }

    /// <summary>What is worked out in other words than ours, and must be the same.</summary>
    public IReadOnlyList<(string Name, Expression Same)> Open => _open;

    public IEnumerable<string> Faults(WiredPoint point)
    {
        string? found = point.Kind switch
        {
            PointKind.Reading => Reading(point) ?? Failure(point),
            PointKind.Contact => Contact(point),
            PointKind.Coil => Coil(point),
            _ => Setting(point),
        };
        return found is null ? [] : [$"`{point.Path}` ({point.Span}): {found}"];
    }

    /// <summary>What the operator's station writes goes to the input of its name, straight, and to no other.</summary>
    public IEnumerable<string> Operated(ImmutableArray<ExportedVariable> operated) =>
    [
        .. Misled(operated),
        .. operated.GroupBy(variable => Handed(variable.Path)?.Variable).Where(shared => shared.Key is not null && shared.Count() > 1)
            .Select(shared => $"`{shared.Key!.Name}` of the operator's station goes to more than one input: {string.Join(", ", shared.Select(variable => $"`{variable.Path}`"))}"),
    ];

    private IEnumerable<string> Misled(ImmutableArray<ExportedVariable> operated) =>
        from variable in operated
        let handed = Handed(variable.Path)?.Variable
        where handed is null || handed.Role != VariableRole.Input || _addresses.ContainsKey(handed.Name)
            || (!Same(handed.Name, variable.Name) && _program.Inputs.Any(input => Same(input.Name, variable.Name)))
        select $"`{variable.Path}` is to be what the operator's station writes to {variable.Name}, and is {(handed is null ? "something else" : $"`{handed.Name}`")}";

    /// <summary>What is written where the site has no signal.</summary>
    public IEnumerable<string> Strangers(ImmutableArray<WiredPoint> points)
    {
        HashSet<string> known = [.. points.Select(point => point.Address)];
        return _program.Outputs.Where(output => _addresses.TryGetValue(output.Name, out string? address) && !known.Contains(address))
            .Select(output => $"`{output.Name}` is written to {_addresses[output.Name]}, where the site has no signal");
    }

    private string? Reading(WiredPoint point)
    {
        if (At(point, Handed(point.Path), out Variable current) is { } elsewhere)
        {
            return elsewhere;
        }

        return LoopTrial.Reading(_called.Builder, Handed(point.Path)!, current, point.Range) is var (microamperes, reads)
            ? FormattableString.Invariant($"at {microamperes} microamperes the text reads {reads}; with {point.Range.Minimum} at 4 mA and {point.Range.Maximum} at 20 mA it is {LoopCurrent.Reading(microamperes, point.Range)}")
            : null;
    }

    private string? Failure(WiredPoint point)
    {
        Expression? failed = Handed($"{point.Path}.fault");
        if (failed is null || At(point, failed, out Variable current) is not null)
        {
            return $"whether its loop has failed is not judged by what is at {point.Address} alone";
        }

        Variable? before = ExpressionGraph.Variables([failed]).FirstOrDefault(variable => variable.Role == VariableRole.State);
        Variable power = _program.Inputs.First(input => input.Name == PowerReturned);
        ImmutableArray<Expression> values = [failed];
        if (before is not null)
        {
            (StateVariable kept, Expression next) = _called.Kept(before);
            if (kept.Initial == 0 || At(point, next, out _) is not null)
            {
                return "a loop has failed until it has been seen sound; what the text keeps of it says otherwise";
            }

            values = [failed, next];
        }

        if (LoopTrial.Failure(_called.Builder, values, current, before, power) is not var (microamperes, wasFailed, reads))
        {
            return null;
        }

        return FormattableString.Invariant(
            $"at {microamperes} microamperes, {Words(wasFailed)} before, its loop is {Words(!reads)} by NAMUR NE 43; the text takes it for {Words(reads)}");
    }

    private string? Contact(WiredPoint point)
    {
        Expression? handed = Handed(point.Path);
        return At(point, handed, out Variable contact) is { } elsewhere ? elsewhere
            : handed == _called.Builder.Variable(contact) ? null
            : $"the text does not take the contact at {point.Address} as it is";
    }

    private string? Coil(WiredPoint point)
    {
        if (Written(point, out Expression written) is { } nowhere)
        {
            return nowhere;
        }

        Expression? said = Handed(point.Path);
        Expression? wanted = said is not null && point.Inverted ? _called.Builder.Not(said) : said;
        if (wanted is null)
        {
            return "the block says nothing of it";
        }

        if (written == _called.Builder.Not(wanted))
        {
            return point.Inverted
                ? $"it is on without power, so its coil at {point.Address} is driven when it is off; the text drives it when it is on"
                : $"it is off without power, so its coil at {point.Address} is driven when it is on; the text drives it when it is off";
        }

        if (written != wanted && _said.TryGetValue(written, out string? other))
        {
            return $"what stands at {point.Address} is driven by `{other}`";
        }

        Demand(point, written, wanted);
        return null;
    }

    private string? Setting(WiredPoint point)
    {
        if (Written(point, out Expression written) is { } nowhere)
        {
            return nowhere;
        }

        if (Handed(point.Path) is not { } said)
        {
            return "the block says nothing of it";
        }

        Demand(point, written, LoopCurrent.Of(_called.Builder, said, point.Range));
        return null;
    }

    private void Demand(WiredPoint point, Expression written, Expression wanted)
    {
        if (written != wanted)
        {
            _open.Add(($"{point.Path} at {point.Address}", _called.Builder.Equal(written, wanted)));
        }
    }

    private Expression? Handed(string path) => _names.TryGetValue(path, out string? name) ? _called.Value(name) : null;

    private string? Written(WiredPoint point, out Expression written)
    {
        string? name = _addresses.FirstOrDefault(pair => pair.Value == point.Address).Key;
        written = name is not null && _called.Outputs.TryGetValue(name, out Expression? value) ? value : _called.Builder.False;
        return name is null ? $"nothing is written to {point.Address}" : null;
    }

    /// <summary>That the value depends on no other address than the point's, or what it depends on.</summary>
    private string? At(WiredPoint point, Expression? value, out Variable found)
    {
        Variable[] read = value is null ? [] : [.. ExpressionGraph.Variables([value]).Where(variable => variable.Role == VariableRole.Input && variable.Name != PowerReturned)];
        found = read.FirstOrDefault() ?? _program.Inputs[0];
        string[] places = [.. read.Select(variable => _addresses.GetValueOrDefault(variable.Name, variable.Name))];
        return places is [{ } only] && only == point.Address ? null
            : places.Length == 0 ? $"it is not read from its address {point.Address}"
            : $"it is read from {string.Join(", ", places)}; its address is {point.Address}";
    }

    private static string Words(bool failed) => failed ? "failed" : "sound";

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
