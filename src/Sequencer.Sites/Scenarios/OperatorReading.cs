using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Sites.Scenarios;

/// <summary>Reads how an operator answers prompts: one prompt an entry of <c>operator</c>.</summary>
internal static class OperatorReading
{
    /// <summary>The words of <see cref="OperatorManner"/>, in its order.</summary>
    public static IReadOnlyList<string> Manners { get; } = ["as_meant", "late", "never", "wrong"];

    public static NumberRange Delays => new(0, 7 * 86_400);

    public static IEnumerable<OperatorRule> Each(YamlFields file)
    {
        Dictionary<string, Placed<string>> first = new(StringComparer.Ordinal);
        foreach (YamlFields fields in file.EachItem("operator"))
        {
            Placed<string> prompt = fields.RequiredText("prompt");
            Placed<string> answer = fields.RequiredText("answer");
            double delay = fields.OptionalQuantity("after", Dimension.Time, Delays)?.Value ?? 0;
            OperatorManner manner = Manner(fields.OptionalWord("manner", Manners));
            double late = manner == OperatorManner.Late ? fields.RequiredQuantity("late_by", Dimension.Time, Delays) : 0;
            string wrong = manner == OperatorManner.Wrong ? fields.RequiredText("wrong_answer").Value : "";
            fields.RejectUnknownKeys();
            if (!first.TryAdd(prompt.Value, prompt))
            {
                fields.Diagnostics.Add(YamlDiagnostics.DuplicateKey(prompt.Span, prompt.Value, first[prompt.Value].Span));
                continue;
            }

            yield return new OperatorRule(prompt.Value, answer.Value, delay, manner, late, wrong, prompt.Span);
        }
    }

    private static OperatorManner Manner(string? word) => (OperatorManner)Manners.ToList().IndexOf(word ?? Manners[0]);
}
