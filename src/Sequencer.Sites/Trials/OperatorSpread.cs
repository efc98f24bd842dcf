using Sequencer.Text;

namespace Sequencer.Sites.Trials;

/// <summary>
/// How operators answer a prompt, over the runs of a set: after a time between two, and in shares of the runs late, never or wrongly.
/// </summary>
public sealed record OperatorSpread(
    string Prompt,
    string Answer,
    double SoonestSeconds,
    double LatestSeconds,
    double Late,
    double LateSeconds,
    double Never,
    double Wrong,
    string WrongAnswer,
    SourceSpan Span);
