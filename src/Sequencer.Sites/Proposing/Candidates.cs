using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Sites.Proposing;

/// <summary>
/// What may be added to the program of the unit that states a broken requirement: an interlock of its outputs, or a further
/// condition of a way that was taken in the run that breaks it. Words come from the requirement and from the unit's own conditions.
/// </summary>
internal sealed class Candidates
{
    /// <summary>Facts beside those of the requirement that are tried.</summary>
    private const int MostOtherFacts = 40;

    private readonly BrokenRequirement _broken;
    private readonly SourceText _file;
    private readonly int _interlockPlace;
    private readonly string _interlockName;

    /// <param name="site">The site as it is.</param>
    /// <param name="broken">What is to be mended.</param>
    /// <param name="number">Which of the unit's broken requirements it is, from 0: so that two mends of one program have two names.</param>
    public Candidates(LoadedSite site, BrokenRequirement broken, int number)
    {
        _broken = broken;
        _file = site.Texts.First(text => text.Path == broken.Unit.Source.Path);
        _interlockPlace = InterlockPlace();
        _interlockName = FreeName(number);
    }

    /// <summary>Interlocks and ways that guard against one part, or against all that must not come together with an output.</summary>
    /// <param name="taken">Ways taken in the run, the last one first.</param>
    /// <param name="running">Outputs of the unit that are on where the run ends; blocked where the requirement names none.</param>
    public ImmutableArray<Candidate> Plain(IReadOnlyList<Transition> taken, IReadOnlyList<string> running)
    {
        HazardPart[] others = [.. OtherFacts()];
        (ImmutableArray<string> Outputs, ImmutableArray<Condition> Others)[] devices = [.. _broken.Devices()];
        List<Candidate> found = [];
        foreach ((ImmutableArray<string> outputs, ImmutableArray<Condition> apart) in devices)
        {
            Hazard[] hazards = [.. Whole(apart), .. apart.SelectMany(Singles).Concat(others).Select(part => new Hazard(part))];
            found.AddRange(
                from hazard in hazards
                from some in outputs.Length == 1 ? [outputs] : outputs.Select(one => ImmutableArray.Create(one)).Append(outputs)
                select Interlock(some, hazard));
        }

        Hazard[] all = [.. Whole(_broken.Parts), .. _broken.Parts.SelectMany(Singles).Concat(others).Select(part => new Hazard(part))];
        if (devices.Length == 0)
        {
            found.AddRange(from hazard in all from tag in running select Interlock([tag], hazard));
        }

        found.AddRange(from way in taken where IsHere(way) from hazard in all select Narrower(way, hazard));
        return Candidate.InOrder(found);
    }

    private static IEnumerable<Hazard> Whole(ImmutableArray<Condition> parts) =>
        parts.Length > 1 ? [new Hazard([.. parts.Select(HazardPart.Of)], true)] : [];

    /// <summary>A part of the requirement, and each fact in it, as the hazard.</summary>
    private static IEnumerable<HazardPart> Singles(Condition part)
    {
        yield return HazardPart.Of(part);
        foreach ((Condition leaf, bool denied) in Leaves(part))
        {
            HazardPart fact = HazardPart.Of(leaf);
            yield return denied ? fact.Denied : fact;
        }
    }

    /// <summary>Facts that other lines of the unit use of the same things, each and its denial; and thresholds that they use.</summary>
    private IEnumerable<HazardPart> OtherFacts()
    {
        UnitProgram unit = _broken.Unit;
        Condition[] conditions =
        [
            .. unit.Interlocks.SelectMany(one => new[] { one.Condition, one.Release }).OfType<Condition>(),
            .. unit.Permissives.Select(one => one.Condition),
            .. unit.Trips.Select(one => one.Condition),
            .. unit.Latches.SelectMany(one => new[] { one.Set, one.Clear }),
            .. unit.Transitions.Select(one => one.When),
            .. unit.StartConditions.Select(one => one.Condition),
        ];
        return conditions.SelectMany(ConditionTree.Parts)
            .Where(part => ConditionTree.Children(part).IsEmpty && _broken.IsAbout(part))
            .Select(HazardPart.Of)
            .DistinctBy(part => part.Words)
            .Take(MostOtherFacts)
            .SelectMany(part => new[] { part, part.Denied });
    }

    private static IEnumerable<(Condition Leaf, bool Denied)> Leaves(Condition root)
    {
        Stack<(Condition Condition, bool Denied)> open = new([(root, false)]);
        while (open.TryPop(out (Condition Condition, bool Denied) top))
        {
            ImmutableArray<Condition> children = ConditionTree.Children(top.Condition);
            if (children.IsEmpty)
            {
                yield return top;
            }

            for (int index = children.Length - 1; index >= 0; index--)
            {
                open.Push((children[index], top.Denied != top.Condition is Negation));
            }
        }
    }

    public Candidate Interlock(ImmutableArray<string> outputs, Hazard hazard)
    {
        string words = $"interlock {_interlockName} \"{_broken.Requirement.Title}\" {string.Join(", ", outputs)} blocked {hazard.Blocked}";
        return new Candidate(new TextEdit(_file.At(_interlockPlace, 0), words + "\n"), words, _interlockName, hazard, outputs.Length);
    }

    private Candidate Narrower(Transition way, Hazard hazard)
    {
        TextSpan span = way.When.Span.Span;
        string when = _file.Content.Substring(span.Start, span.Length);
        string rest = way.When is AnyOf ? $"({when})" : when;
        return new Candidate(new TextEdit(_file.At(span.Start, span.Length), $"{hazard.Absent} and {rest}"), $"{hazard.Absent} and {rest}", null, hazard, 1);
    }

    /// <summary>Stands in the program's own file, not in a library, where other units would be changed too.</summary>
    private bool IsHere(Transition way) => way.When.Span.Source.Use is null && way.When.Span.Source.Path == _file.Path && way.When.Span.Source.Content == _file.Content;

    /// <summary>Behind the last interlock of the file; without one, before its first requirement.</summary>
    private int InterlockPlace()
    {
        SourceSpan[] interlocks = [.. _broken.Unit.Interlocks.Select(one => one.Span.Written).Concat(_broken.Unit.Exclusions.Select(one => one.Span.Written)).Where(span => span.Source.Path == _file.Path)];
        if (interlocks.Length > 0)
        {
            int line = _file.Position(interlocks.Max(span => span.Span.End)).Line;
            return line < _file.LineCount ? _file.LineStart(line + 1) : _file.Content.Length;
        }

        SourceSpan[] requirements = [.. _broken.Unit.Requirements.Select(one => one.Span.Written).Where(span => span.Source.Path == _file.Path)];
        int before = requirements.Length > 0 ? requirements.Min(span => span.Span.Start) : _broken.Unit.Span.Written.Span.End;
        int at = _file.Position(before).Line + (requirements.Length > 0 ? 0 : 1);
        return at <= _file.LineCount ? _file.LineStart(at) : _file.Content.Length;
    }

    /// <summary>The next of I1, I2, and so on: above all that the unit has, so that nobody takes it for one that was there.</summary>
    private string FreeName(int number)
    {
        int last = _broken.Unit.Interlocks.Select(one => one.Name).Concat(_broken.Unit.Exclusions.Select(one => one.Name))
            .Select(name => name.StartsWith('I') && int.TryParse(name.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out int known) ? known : 0)
            .DefaultIfEmpty(0).Max();
        return string.Create(CultureInfo.InvariantCulture, $"I{last + 1 + number}");
    }
}
