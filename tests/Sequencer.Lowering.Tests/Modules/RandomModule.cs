using System.Text;

namespace Sequencer.Lowering.Tests.Modules;

/// <summary>
/// A module of some of the lines below, with a gap or a value in each place, in other modules or not, and equipment made
/// from it; and the same unit written out by hand. In a line, <c>{a}</c> is a place for a value and <c>#X</c> a name of the module's own.
/// </summary>
internal sealed class RandomModule
{
    private static readonly string[] Lines =
    [
        "input {level}  0 .. {full}  at {level_at}  {title}  bad after {filter}",
        "output {pump}  motor  at {pump_at}  \"Pump\"  safe stopped",
        "group #G1 \"Group\"",
        "alarm #A1 \"Level high\" when {level} > {high}",
        "interlock #I1 \"Overfill\" {pump} blocked from {level} > {high} until {level} < {low} and reset, group #G1",
        "interlock #I2 \"Not wanted\" {pump} blocked while {stop}, on after {filter}",
        "trip #T1 \"Runs dry\" when {pump} and {level} < {low} then hold, group #G1",
        "latch #L1 \"Was high\" set when {level} > {high} clear when {level} < {low} retained",
        "alarm #A2 \"Was high\" when #L1 and not #T1 latched",
        "require #H1 \"Overfill\" never {pump} and {level} > {high}",
        "require #H2 \"Soon off\" after {stop}, {pump} stopped within {scans} scans",
    ];

    private readonly Random _random;
    private readonly int _equipment;
    private readonly int _depth;
    private readonly HashSet<string> _fixed;
    private readonly string[] _lines;

    public RandomModule(int seed)
    {
        _random = new Random(seed);
        _equipment = _random.Next(1, 4);
        _depth = _random.Next(0, 4);
        _fixed = [.. new[] { "full", "filter", "high", "low", "title", "scans" }.Where(_ => _random.Next(2) == 0)];
        _lines = [.. Lines.Where((line, index) => index < 3 || line.Contains("#T1 \"", StringComparison.Ordinal) || line.Contains("#L1 \"", StringComparison.Ordinal) || _random.Next(3) > 0)];
    }

    public string Library
    {
        get
        {
            string[] gaps = [.. Gaps()];
            StringBuilder text = new("library 1\n");
            string parameters = string.Join(", ", gaps.Select(gap => $"{Kind(gap)} {gap}_gap"));
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"\nmodule M0({parameters})\n");
            foreach (string line in _lines)
            {
                string body = Places(line).Aggregate(line, (filled, place) => filled.Replace($"{{{place}}}", _fixed.Contains(place) ? Value(place, 0) : place + "_gap", StringComparison.Ordinal));
                text.Append("  ").Append(body.Replace("#", "", StringComparison.Ordinal)).Append('\n');
            }

            string handedOn = string.Join(", ", gaps.Select(gap => $"{gap}_gap = {gap}_gap"));
            for (int level = 1; level <= _depth; level++)
            {
                text.Append(System.Globalization.CultureInfo.InvariantCulture, $"\nmodule M{level}({parameters})\n  equipment IN{level} is M{level - 1}({handedOn})\n");
            }

            return text.ToString();
        }
    }

    public string WithModule => Program("use \"lib/m.seqlib\"\n", number =>
        $"equipment E{number} is M{_depth}({string.Join(", ", Gaps().Select(gap => $"{gap}_gap = {Value(gap, number)}"))})\n");

    public string ByHand => Program("", number =>
    {
        string front = $"E{number}_" + string.Concat(Enumerable.Range(1, _depth).Reverse().Select(level => $"IN{level}_"));
        return string.Concat(_lines.Select(line => Places(line)
            .Aggregate(line, (filled, place) => filled.Replace($"{{{place}}}", Value(place, _fixed.Contains(place) ? 0 : number), StringComparison.Ordinal))
            .Replace("#", front, StringComparison.Ordinal) + "\n"));
    });

    private string Program(string use, Func<int, string> equipment)
    {
        string made = string.Concat(Enumerable.Range(1, _equipment).Select(equipment));
        return $"""
            language 1
            unit U "Unit"
            {use}input HS1  switch  at %IX9.0  "Stop switch"
            {made}
            procedure
              step 10 "Run"
                run P1
                limit 10 min then hold "Slow"
                go finish when LT1 < 0.500 m3

            """;
    }

    private IEnumerable<string> Gaps() => _lines.SelectMany(Places).Distinct().Where(place => !_fixed.Contains(place));

    private static IEnumerable<string> Places(string line) => line.Split('{').Skip(1).Select(part => part[..part.IndexOf('}', StringComparison.Ordinal)]).Distinct();

    private static string Kind(string place) => place switch
    {
        "level_at" or "pump_at" => "address",
        "title" => "text",
        "full" or "filter" or "high" or "low" => "quantity",
        "scans" => "number",
        _ => "name",
    };

    private static string Value(string place, int number) => place switch
    {
        "level" => $"LT{number}",
        "level_at" => $"%IW{number}",
        "pump" => $"P{number}",
        "pump_at" => $"%QX0.{number}",
        "title" => $"\"Level {number}\"",
        "stop" => "HS1",
        "full" => $"{number + 10}.000 m3",
        "filter" => $"{number + 1} s",
        "high" => $"{number + 5}.500 m3",
        "low" => $"{number + 1}.500 m3",
        _ => $"{number + 2}",
    };
}
