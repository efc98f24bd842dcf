using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Who owns shared equipment: first come, first served, ties in the order of <c>site.yaml</c>. Of each two units one is
/// ahead of the other; the owner is the unit that claims and is ahead of all others that claim. The queue is retained.
/// </summary>
internal sealed class ClaimQueue
{
    private readonly SiteScan _site;
    private readonly SharedEquipment _equipment;
    private readonly string _name;
    private readonly ImmutableArray<UnitProgram> _claimants;
    private readonly Origin _origin;
    private readonly Dictionary<string, DeclaredState> _claims = new(StringComparer.Ordinal);
    private readonly Dictionary<(string First, string Second), DeclaredState> _ahead = [];

    public ClaimQueue(SiteScan site, UnitProgram unit, SharedEquipment equipment)
    {
        _site = site;
        _equipment = equipment;
        _name = QualifiedName.Of(unit.Name, equipment.Name);
        _claimants = site.Program.ClaimantsOf(_name);
        _origin = new Origin(equipment.Span);
        foreach (UnitProgram claimant in _claimants)
        {
            _claims[claimant.Name] = Flag($"{claimant.Name}.claims");
        }

        for (int first = 0; first < _claimants.Length; first++)
        {
            for (int second = first + 1; second < _claimants.Length; second++)
            {
                (string one, string other) = (_claimants[first].Name, _claimants[second].Name);
                _ahead[(one, other)] = Flag($"{one}.ahead_of_{other}");
            }
        }
    }

    /// <summary>The unit, or any where null, owned it at the start of the scan; what is claimed in this scan can be owned in the next.</summary>
    public Expression Owns(string? unit)
    {
        ExpressionBuilder build = _site.System.Expressions;
        if (unit is null)
        {
            return build.Or(_claimants.Select(claimant => Owns(claimant.Name)));
        }

        if (!_claims.TryGetValue(unit, out DeclaredState? claims))
        {
            return build.False;
        }

        IEnumerable<Expression> others = _claimants.Where(other => other.Name != unit)
            .Select(other => build.Or(build.Not(_claims[other.Name].Current), IsAhead(unit, other.Name)));
        return _site.System.Define($"{_name}.owned_by.{unit}", build.And(others.Prepend(claims.Current)), _origin);
    }

    public void Finish()
    {
        ExpressionBuilder build = _site.System.Expressions;
        Dictionary<string, Expression> stays = [];
        foreach (UnitProgram unit in _claimants)
        {
            Expression wants = _site.Unit(unit.Name).Claims.Wants(_name);
            stays[unit.Name] = build.And(_claims[unit.Name].Current, wants);
            _claims[unit.Name].Next = wants;
        }

        foreach (((string first, string second), DeclaredState ahead) in _ahead)
        {
            ahead.Next = build.IfThenElse(build.And(stays[first], stays[second]), ahead.Current, build.Not(stays[second]));
        }

        Owed();
    }

    private DeclaredState Flag(string below) => _site.System.State($"{_name}.{below}", false, retained: true, StatePurpose.Control, _origin);

    private Expression IsAhead(string one, string other) => _ahead.TryGetValue((one, other), out DeclaredState? ahead)
        ? ahead.Current
        : _site.System.Expressions.Not(_ahead[(other, one)].Current);

    /// <summary>What shared equipment owes without being asked: never two owners, and never none while it is claimed.</summary>
    private void Owed()
    {
        ExpressionBuilder build = _site.System.Expressions;
        string claimants = string.Join(", ", _claimants.Select(unit => unit.Name));
        Expression two = build.Or(_ahead.Keys.Select(pair => build.And(Owns(pair.First), Owns(pair.Second))));
        _site.System.Require(new Requirement(
            $"{_name}.one_owner", $"{_equipment.Title}: one owner", $"never two of {claimants} own {_name}", RequirementKind.Never, build.Not(two), _origin));
        Expression claimed = build.Or(_claims.Values.Select(claims => claims.Current));
        _site.System.Require(new Requirement(
            $"{_name}.granted", $"{_equipment.Title}: granted while it is claimed", $"always one of {claimants} owns {_name} while it is claimed", RequirementKind.Never, build.Implies(claimed, Owns(null)), _origin));
    }
}
