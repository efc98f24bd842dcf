namespace Sequencer.Benchmarks;

/// <summary>
/// One thing worth measuring, with something outside of it measured in the same run to compare with:
/// a figure alone says more about the machine's load than about the code. No benchmark fails on a time.
/// </summary>
internal abstract class Benchmark
{
    public abstract string Name { get; }

    public abstract IEnumerable<Figure> Run();
}
