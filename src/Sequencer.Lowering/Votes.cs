using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>What votes say, each worked out once, and the alarms for members that disagree or are not usable.</summary>
internal sealed class Votes
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, Truth> _known = new(StringComparer.Ordinal);

    public Votes(UnitScan scan) => _scan = scan;

    public Truth Of(Vote vote)
    {
        if (!_known.TryGetValue(vote.Name, out Truth truth))
        {
            Origin origin = new(vote.Span);
            truth = ConditionLowering.Lower(_scan, vote.Fact, new ConditionPlace(_scan.Own(vote.Name)));
            _scan.System.Define(_scan.Own(vote.Name), truth.Surely, origin);
            _scan.System.Define(_scan.Own($"{vote.Name}.possibly"), truth.Possibly, origin);
            _known.Add(vote.Name, truth);
        }

        return truth;
    }

    public void Finish()
    {
        ExpressionBuilder build = _scan.Build;
        foreach (Vote vote in _scan.Unit.Votes)
        {
            Of(vote);
            Origin origin = new(vote.Span);
            IEnumerable<Truth> members = vote.Members.Select(member => ConditionLowering.Lower(_scan, member, new ConditionPlace(_scan.Own(vote.Name))));
            _scan.System.Alarm(
                _scan.Own($"{vote.Name}.bad"), vote.HasBadMemberInWords(), build.Or(members.Select(member => build.And(member.Possibly, build.Not(member.Surely)))), origin);
            if (vote.Differ is { } differ)
            {
                Expression surely = ConditionLowering.Lower(_scan, vote.Disagreement, new ConditionPlace(_scan.Own(vote.Name))).Surely;
                Expression lasting = Clocks.Lasting(
                    _scan.System, _scan.Own($"{vote.Name}.differ"), surely, differ.Scans(_scan.ScanMilliseconds), StatePurpose.Control, origin);
                _scan.System.Alarm(_scan.Own($"{vote.Name}.differ"), vote.DiffersInWords(), lasting, origin);
            }
        }
    }
}
