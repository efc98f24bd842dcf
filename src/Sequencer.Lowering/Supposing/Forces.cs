using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Lowering.Supposing;

/// <summary>Whether a protection is in force: always, but for what is supposed.</summary>
internal sealed class Forces
{
    private readonly SiteScan _site;
    private readonly Dictionary<string, Protection> _protections;
    private readonly Dictionary<string, Expression> _known = new(StringComparer.Ordinal);

    public Forces(SiteScan site)
    {
        _site = site;
        _protections = ProtectionList.Of(site.Program).ToDictionary(protection => protection.Name, StringComparer.Ordinal);
    }

    /// <param name="protection">Its name on the site, one of <see cref="ProtectionList"/>.</param>
    public Expression Of(string protection)
    {
        if (!_known.TryGetValue(protection, out Expression? force))
        {
            force = Decide(_protections[protection]);
            _known.Add(protection, force);
        }

        return force;
    }

    private Expression Decide(Protection protection)
    {
        if (_site.Supposed.Absent.Contains(protection.Name))
        {
            return _site.System.Expressions.False;
        }

        if (!_site.Supposed.ProtectionsAreAssumed)
        {
            return _site.System.Expressions.True;
        }

        Expression force = _site.System.Input($"{protection.Name}.in_force");
        _site.System.Assume(new Assumption(protection.Name, protection.Title, force, new Origin(protection.Span)));
        return force;
    }
}
