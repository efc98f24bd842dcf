using Parquet;
using Parquet.Schema;
using Sequencer.Simulation.Trials;

namespace Sequencer.Sites.Trials;

/// <summary>The runs as a table in Apache Parquet: a row for each run, what it had and what came of it. The same set gives the same bytes.</summary>
internal static class TrialTable
{
    public static byte[] Write(TrialSet set)
    {
        List<(DataField Field, Func<ParquetRowGroupWriter, DataField, Task> Write)> columns = [.. Columns(set)];
        using MemoryStream stream = new();
        WriteAsync(stream, columns).GetAwaiter().GetResult();
        return stream.ToArray();
    }

    private static async Task WriteAsync(MemoryStream stream, List<(DataField Field, Func<ParquetRowGroupWriter, DataField, Task> Write)> columns)
    {
        ParquetSchema schema = new([.. columns.Select(column => column.Field)]);
        ParquetWriter writer = await ParquetWriter.CreateAsync(schema, stream).ConfigureAwait(false);
        await using (writer.ConfigureAwait(false))
        {
            using ParquetRowGroupWriter group = writer.CreateRowGroup();
            foreach ((DataField field, Func<ParquetRowGroupWriter, DataField, Task> write) in columns)
            {
                await write(group, field).ConfigureAwait(false);
            }

            group.CompleteValidate();
        }
    }

    private static IEnumerable<(DataField Field, Func<ParquetRowGroupWriter, DataField, Task> Write)> Columns(TrialSet set)
    {
        TrialDraw[] draws = [.. Enumerable.Range(1, set.Runs.Length).Select(set.Plan.Draw)];
        yield return Whole("run", draws.Select(draw => draw.Run));
        yield return Text("scenario", draws.Select(draw => draw.Base));
        yield return Text("recipe", draws.Select(draw => draw.Recipe));
        for (int fault = 0; fault < (set.Settings.Faults == TrialFaults.Pairs ? 2 : set.Settings.Faults == TrialFaults.Each ? 1 : 0); fault++)
        {
            int place = fault;
            string name = fault == 0 ? "fault" : "second_fault";
            yield return Text(name, draws.Select(draw => draw.Faults[place].Fault));
            yield return Number(name + "_at_s", draws.Select(draw => draw.Faults[place].Seconds));
        }

        for (int tolerance = 0; tolerance < set.Trials.Tolerances.Length; tolerance++)
        {
            int place = tolerance;
            yield return Number(Named("with", set.Trials.Tolerances[place].Place.Value, set.Trials.Tolerances[place].Unit), draws.Select(draw => draw.Tolerances[place]));
        }

        for (int prompt = 0; prompt < set.Trials.Description.Operator.Length; prompt++)
        {
            int place = prompt;
            string asked = set.Trials.Description.Operator[place].Prompt;
            yield return Text($"{asked} manner", draws.Select(draw => Scenarios.OperatorReading.Manners[(int)draw.Scenario.Operator.First(rule => rule.Prompt == asked).Manner]));
            yield return Number($"{asked} delay [s]", draws.Select(draw => Delay(draw, asked)));
        }

        foreach ((DataField, Func<ParquetRowGroupWriter, DataField, Task>) column in Outcomes(set))
        {
            yield return column;
        }
    }

    private static IEnumerable<(DataField Field, Func<ParquetRowGroupWriter, DataField, Task> Write)> Outcomes(TrialSet set)
    {
        yield return Text("end", set.Runs.Select(run => run.End.ToString()));
        yield return Number("seconds", set.Runs.Select(run => run.Seconds));
        yield return Number("batch_s", set.Runs.Select(run => run.BatchSeconds));
        for (int value = 0; value < set.Trials.Measures.Values.Length; value++)
        {
            int place = value;
            TrialValue kept = set.Trials.Measures.Values[place];
            yield return Number(Named(kept.Taken.ToString(), kept.Name, kept.Unit), set.Runs.Select(run => run.Values[place]));
        }

        for (int rim = 0; rim < set.Trials.Measures.Rims.Length; rim++)
        {
            int place = rim;
            yield return Number(Named("", set.Trials.Measures.Rims[place], "L"), set.Runs.Select(run => run.Overflowed[place]));
        }

        yield return Number("leaked [L]", set.Runs.Select(run => run.Leaked));
        yield return Whole("expectations_failed", set.Runs.Select(run => run.Expectations.Count(came => !came)));
        yield return Text("first_alarm", set.Runs.Select(run => run.FirstAlarm?.Name ?? ""));
        yield return Number("first_alarm_s", set.Runs.Select(run => run.FirstAlarm?.Seconds ?? double.NaN));
        yield return Text("reaction", set.Runs.Select(run => run.Reaction?.Name ?? ""));
        yield return Number("reaction_s", set.Runs.Select(run => run.Reaction?.Seconds ?? double.NaN));
        yield return Number("at_rest_s", set.Runs.Select(run => run.RestSeconds));
        yield return Text("requirement_broken", set.Runs.Select(run => run.Broken?.Name ?? ""));
        yield return Text("overdosed", set.Runs.Select(run => run.Overdosed?.Output ?? ""));
        yield return Number("overdosed_by [L]", set.Runs.Select(run => run.Overdosed?.Litres ?? double.NaN));
        yield return Text("final_states", set.Runs.Select(run => run.Final));
        yield return Number("unbalanced", set.Runs.Select(run => run.Unbalanced));
        yield return Text("plant_model_stopped", set.Runs.Select(run => run.Failure));
        yield return Text("unsafe", set.Runs.Select(run => set.UnsafeOf(run) is var unsafeEnd && unsafeEnd == UnsafeEnd.None ? "" : unsafeEnd.ToString()));
    }

    private static double Delay(TrialDraw draw, string prompt)
    {
        for (int index = 0; index < draw.Scenario.Operator.Length; index++)
        {
            if (draw.Scenario.Operator[index].Prompt == prompt && index < draw.Delays.Length)
            {
                return draw.Delays[index];
            }
        }

        return double.NaN;
    }

    private static string Named(string how, string name, string unit) =>
        $"{(how.Length == 0 || how == nameof(TakenAs.AtEnd) ? "" : how.ToLowerInvariant() + " ")}{name}{(unit.Length == 0 ? "" : $" [{unit}]")}";

    private static (DataField Field, Func<ParquetRowGroupWriter, DataField, Task> Write) Whole(string name, IEnumerable<int> values)
    {
        int[] kept = [.. values];
        return (new DataField<int>(name), (group, field) => group.WriteAsync<int>(field, kept.AsMemory()));
    }

    /// <summary>What is no number is null in the table.</summary>
    private static (DataField Field, Func<ParquetRowGroupWriter, DataField, Task> Write) Number(string name, IEnumerable<double> values)
    {
        double?[] kept = [.. values.Select(value => double.IsFinite(value) ? value : (double?)null)];
        return (new DataField<double?>(name), (group, field) => group.WriteAsync<double>(field, kept.AsMemory()));
    }

    private static (DataField Field, Func<ParquetRowGroupWriter, DataField, Task> Write) Text(string name, IEnumerable<string> values)
    {
        string[] kept = [.. values];
        return (new DataField<string>(name), (group, field) => group.WriteAsync(field, kept));
    }
}
