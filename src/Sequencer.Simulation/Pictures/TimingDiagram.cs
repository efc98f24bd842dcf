using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Simulation.Traces;

namespace Sequencer.Simulation.Pictures;

/// <summary>
/// A run as a timing diagram: what the operator did, units with their steps, the inputs that matter, latches, outputs, and
/// a marked line where the run ends. Where time is compressed the axis says so.
/// </summary>
public static class TimingDiagram
{
    private const double LeftMargin = 250;
    private const double RightMargin = 24;
    private const double LeastWidth = 760;
    private const double Head = 72;
    private const double Foot = 64;
    private const double FlagHeight = 15;
    private const double LaneHeight = 22;
    private const double BarHeight = 12;
    private const double SectionGap = 10;
    private const double TitleSize = 17;

    public static string Svg(TraceStory story, EmbeddedFont font)
    {
        Layout layout = new(story, font);
        SvgSurface paper = new(layout.Width, layout.Height, font);
        layout.Draw(paper);
        return paper.ToString();
    }

    public static byte[] Png(TraceStory story, EmbeddedFont font)
    {
        Layout layout = new(story, font);
        using PngSurface paper = new((int)layout.Width, (int)layout.Height, font);
        layout.Draw(paper);
        return paper.ToBytes();
    }

    private sealed class Layout
    {
        private readonly TraceStory _story;
        private readonly EmbeddedFont _font;
        private readonly TimingAxis _axis;
        private readonly ImmutableArray<ImmutableArray<TimingLane>> _sections;
        private readonly List<(double X, string Words, int Row, TextAnchor Anchor)> _flags = [];
        private readonly int _flagRows;
        private readonly string _end;

        public Layout(TraceStory story, EmbeddedFont font)
        {
            _story = story;
            _font = font;
            _axis = new TimingAxis(story, LeftMargin, LeastWidth);
            _sections = [.. TimingLanes.Of(story).Where(section => section.Length > 0)];
            _end = $"{story.End.Name} is {story.End.Word}";
            _flagRows = PlaceFlags();
            double lanes = _sections.Sum(section => (section.Length * LaneHeight) + SectionGap);
            Width = Math.Ceiling(_axis.Right + RightMargin);
            Height = Math.Ceiling(Head + (_flagRows * FlagHeight) + SectionGap + lanes + Foot);
        }

        public double Width { get; }

        public double Height { get; }

        public void Draw(DrawingSurface paper)
        {
            Titles(paper);
            double top = Head;
            double bottom = Height - Foot;
            Grid(paper, top, bottom);
            Flags(paper, top, bottom);
            double y = top + (_flagRows * FlagHeight) + SectionGap;
            foreach (ImmutableArray<TimingLane> section in _sections)
            {
                foreach (TimingLane lane in section)
                {
                    Lane(paper, lane, y);
                    y += LaneHeight;
                }

                y += SectionGap;
            }

            End(paper, top, bottom);
            Times(paper, bottom);
            string caution = _story.End.IsReached ? "a run of the program alone: no proof about the plant" : "a run of the program alone, for review";
            paper.Text(Width - TrendFrame.Edge, Height - 8, caution, TrendFrame.Small, Palette.Faint, TextAnchor.End);
        }

        private void Titles(DrawingSurface paper)
        {
            double width = Width - (2 * TrendFrame.Edge);
            string time = TraceTimes.Of(_story.Scans, _story.ScanMilliseconds);
            string title = $"{_story.End.Name} {_story.End.Title}: {_story.End.Word} {time} after power-up";
            paper.Text(TrendFrame.Edge, 26, _font.Fitted(title, TitleSize, width), TitleSize, Palette.Ink);
            paper.Text(TrendFrame.Edge, 45, _font.Fitted(_story.End.Statement, TrendFrame.Label, width), TrendFrame.Label, Palette.Faint);
        }

        private int PlaceFlags()
        {
            List<double> freeFrom = [];
            foreach ((long scan, string words) in Deeds())
            {
                double x = _axis.At(scan);
                double width = _font.Width(words, TrendFrame.Small) + 14;
                bool toLeft = x + width > _axis.Right + RightMargin - 4 && x - width > _axis.Left;
                double start = toLeft ? x - width : x;
                int row = freeFrom.FindIndex(free => free <= start);
                if (row < 0)
                {
                    row = freeFrom.Count;
                    freeFrom.Add(0);
                }

                freeFrom[row] = toLeft ? x + 4 : x + width;
                _flags.Add((x, words, row, toLeft ? TextAnchor.End : TextAnchor.Start));
            }

            return freeFrom.Count;
        }

        /// <summary>What the operator did, and the return of power, which no lane shows.</summary>
        private IEnumerable<(long Scan, string Words)> Deeds() =>
            from moment in _story.Moments
            from happening in moment.Happenings
            where happening.Kind == TraceHappeningKind.Operator || happening.Words.StartsWith("power ", StringComparison.Ordinal)
            select (moment.Scan, happening.Words.Replace("the operator ", "", StringComparison.Ordinal));

        private void Flags(DrawingSurface paper, double top, double bottom)
        {
            if (_flagRows > 0)
            {
                Label(paper, top + 11, "", "operator");
            }

            foreach ((double x, string words, int row, TextAnchor anchor) in _flags)
            {
                double y = top + (row * FlagHeight);
                double width = _font.Width(words, TrendFrame.Small);
                double left = anchor == TextAnchor.End ? x - 8 - width : x + 8;
                paper.Line(x, y + 2, x, bottom, Palette.Action);
                paper.Rectangle(left - 1, y + 1, width + 2, 12, Palette.Paper);
                paper.Text(left, y + 11, words, TrendFrame.Small, Palette.Ink);
                paper.Rectangle(anchor == TextAnchor.Start ? x : x - 5, y + 2, 5, 9, Palette.Action);
            }
        }

        private void Grid(DrawingSurface paper, double top, double bottom)
        {
            foreach ((_, _, double left, _) in _axis.Columns)
            {
                paper.Line(left, top, left, bottom, Palette.Grid);
            }
        }

        private void Lane(DrawingSurface paper, TimingLane lane, double top)
        {
            Label(paper, top + 14, lane.Tag, lane.Description);
            double foot = top + LaneHeight - 4;
            if (lane.IsBar)
            {
                paper.Line(_axis.Left, foot, _axis.Right, foot, Palette.Frame);
            }

            foreach (TimingPiece piece in lane.Pieces)
            {
                double left = _axis.At(piece.From);
                double right = _axis.At(piece.To);
                if (lane.IsBar)
                {
                    paper.Rectangle(left, foot - BarHeight, Math.Max(2, right - left), BarHeight, piece.Colour);
                    continue;
                }

                paper.Rectangle(left, top + 2, Math.Max(1, right - left), LaneHeight - 5, piece.Colour);
                paper.Line(left, top + 2, left, top + LaneHeight - 3, Palette.Frame);
                string words = _font.Fitted(piece.Words, TrendFrame.Small, right - left - 8);
                paper.Text(left + 5, top + 14, words, TrendFrame.Small, Palette.Ink);
            }
        }

        private void Label(DrawingSurface paper, double baseline, string tag, string description)
        {
            double room = _axis.Left - TrendFrame.Edge - 10;
            string shown = _font.Fitted(tag, TrendFrame.Label, room);
            paper.Text(TrendFrame.Edge, baseline, shown, TrendFrame.Label, Palette.Ink);
            double start = TrendFrame.Edge + (shown.Length == 0 ? 0 : _font.Width(shown, TrendFrame.Label) + 6);
            string fitted = _font.Fitted(description, TrendFrame.Small, _axis.Left - start - 10);
            paper.Text(start, baseline, fitted, TrendFrame.Small, Palette.Faint);
        }

        private void End(DrawingSurface paper, double top, double bottom)
        {
            double x = _axis.At(_story.Scans);
            Colour colour = _story.End.IsReached ? Palette.Action : Palette.Alarm;
            paper.Line(x, top - 12, x, bottom + 4, colour, 2);
            double width = _font.Width(_end, TrendFrame.Label) + 12;
            double left = Math.Min(x, Width - 8 - width);
            paper.Rectangle(left, top - 18, width, 16, colour);
            paper.Text(left + 6, top - 6, _end, TrendFrame.Label, Palette.Paper);
        }

        /// <summary>Times at the edges of the columns; between them how long it is where time is compressed.</summary>
        private void Times(DrawingSurface paper, double top)
        {
            paper.Line(_axis.Left, top, _axis.Right, top, Palette.Ink);
            Label(paper, top + 16, "", "after power-up");
            Label(paper, top + 29, "", "scan");
            foreach ((long from, long to, double left, double width) in _axis.Columns)
            {
                paper.Line(left, top, left, top + 5, Palette.Ink);
                paper.Text(left + 3, top + 16, TraceTimes.Of(from, _story.ScanMilliseconds), TrendFrame.Small, Palette.Ink);
                paper.Text(left + 3, top + 29, from.ToString(CultureInfo.InvariantCulture), TrendFrame.Small, Palette.Faint);
                if (to - from > 1)
                {
                    Break(paper, left + (width / 2), top, TraceTimes.Span((to - from) * _story.ScanMilliseconds));
                }
            }
        }

        private void Break(DrawingSurface paper, double x, double y, string words)
        {
            paper.Rectangle(x - 4, y - 1, 8, 3, Palette.Paper);
            paper.Line(x - 6, y + 5, x - 1, y - 5, Palette.Ink);
            paper.Line(x + 1, y + 5, x + 6, y - 5, Palette.Ink);
            double width = _font.Width(words, TrendFrame.Small);
            paper.Text(x - (width / 2), y + 43, words, TrendFrame.Small, Palette.Mark);
        }
    }
}
