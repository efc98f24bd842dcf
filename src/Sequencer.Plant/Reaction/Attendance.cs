using System.Collections.Immutable;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// Looks after what the equations leave out between scans: stores that run empty, slurry that
/// settles unstirred, dosing lines that set. They act from the scan on in which they are seen.
/// </summary>
internal sealed class Attendance
{
    /// <summary>An agitator below half its speed stirs no slurry.</summary>
    private const double StirringFrom = 0.5;

    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly ImmutableArray<int> _reagents;
    private readonly ImmutableArray<Drive?> _stirrers;
    private readonly ImmutableArray<double> _fullOfSlurry;

    public Attendance(PlantParts parts, PlantMotion motion)
    {
        _parts = parts;
        _motion = motion;
        _reagents = [.. parts.Model.Reagents.Select(reagent => parts.Source(reagent.Name))];
        _stirrers = [.. parts.Model.Reagents.Select(reagent => reagent.StirredBy is { } tag ? parts.Drive(tag) : null)];
        _fullOfSlurry = [.. Enumerable.Range(0, parts.DosingLines.Length).Select(parts.SlurryInFullLine)];
    }

    /// <summary>True if something begins to change.</summary>
    public bool Observe()
    {
        bool changes = false;
        for (int index = 0; index < _reagents.Length; index++)
        {
            bool stirred = _stirrers[index] is not { } stirrer || stirrer.Effect(_motion.Time) > StirringFrom;
            double left = _parts.StoreLitres(_reagents[index], _motion.Now);
            changes |= _parts.Sources[_reagents[index]].Observe(_motion.Time, left, stirred);
        }

        for (int line = 0; line < _fullOfSlurry.Length; line++)
        {
            if (_fullOfSlurry[line] > 0.0)
            {
                double held = _motion.Now[_parts.Layout.DosingLine(line) + _parts.Contents.Lime];
                double share = held / _fullOfSlurry[line];
                bool stands = share >= DosingLine.DirtyFrom && !_parts.DosingLines[line].IsBlocked && !Moves(line);
                changes |= _parts.DosingLines[line].Observe(_motion.Time, stands);
            }
        }

        return changes;
    }

    private bool Moves(int dosingLine)
    {
        for (int line = 0; line < _parts.Pipes.Length; line++)
        {
            if (_parts.Pipes[line].DosingLine == dosingLine && _motion.Equations.Flows.Of(line, _motion.Time, _motion.Now) > 0.0)
            {
                return true;
            }
        }

        return false;
    }
}
