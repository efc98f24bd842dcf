using Sequencer.Control.TransitionSystems;

namespace Sequencer.Lowering;

/// <summary>Whether somebody with a role is there: one input for each role of a unit.</summary>
internal sealed class Roles(UnitScan scan)
{
    private readonly Dictionary<string, Expression> _roles = new(StringComparer.Ordinal);

    public Expression Of(string role)
    {
        if (!_roles.TryGetValue(role, out Expression? there))
        {
            there = _roles[role] = scan.System.Input(scan.Named($"role.{role}"));
        }

        return there;
    }
}
