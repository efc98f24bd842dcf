using Sequencer.Language.Checking;
using Sequencer.Language.Parsing;
using Sequencer.Language.Tests.Checking;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Parsing;

public sealed class ParseCacheTests
{
    [Fact]
    public void An_unchanged_line_keeps_its_tree_wherever_it_moves()
    {
        ParseCache cache = new();
        ParsedProgram first = ProgramParser.Parse(SamplePrograms.Source("language 1\nstop P1"), cache, new DiagnosticBag());
        ParsedProgram second = ProgramParser.Parse(SamplePrograms.Source("language 1\n\n  open XV1\n    stop P1"), cache, new DiagnosticBag());
        Assert.Same(first.Statements[1].Statement, second.Statements[2].Statement);
        Assert.NotEqual(first.Statements[1].Offset, second.Statements[2].Offset);
    }

    [Fact]
    public void An_edit_adds_one_line()
    {
        ParseCache cache = new();
        ProgramChecker.Check(SamplePrograms.Source(SamplePrograms.Full), 100, cache);
        int before = cache.Count;
        ProgramChecker.Check(SamplePrograms.Source(SamplePrograms.Full.Replace("expect 12 min", "expect 13 min", StringComparison.Ordinal)), 100, cache);
        Assert.Equal(before + 1, cache.Count);
    }

    [Fact]
    public void The_cache_forgets_what_it_has_no_room_for()
    {
        ParseCache cache = new(100);
        for (int index = 100; index < 300; index++)
        {
            cache.Parse($"stop P{index}");
        }

        Assert.InRange(cache.Count, 1, 24);
    }
}
