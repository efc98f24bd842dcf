using System.Collections.Frozen;

namespace Sequencer.Language.Parsing;

/// <summary>The words of the language: those that begin a statement, those that make it go on, and all keywords.</summary>
internal static class StatementWords
{
    /// <summary>Each word that begins a statement, and how such a statement looks.</summary>
    public static FrozenDictionary<string, string> Forms { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["language"] = "language 1",
        ["unit"] = "unit R101 \"Reaction tank\"",
        ["library"] = "library 1",
        ["use"] = "use \"lib/dosing.seqlib\"",
        ["module"] = "module DosingPump(name pump, address pump_at, quantity rate)",
        ["equipment"] = "equipment DOSE1 is DosingPump(pump = P201, pump_at = %QX0.2, rate = 0.20 L/min)",
        ["input"] = "input LT101 0 .. 6.000 m3 at %IW0 \"Tank volume\" bad after 2 s",
        ["output"] = "output P101 motor at %QX0.1 \"Feed pump\" safe stopped",
        ["reagent"] = "reagent CAUSTIC \"Sodium hydroxide\" raises AT101",
        ["parameter"] = "parameter fill_volume = 4.500 m3 from 3.000 m3 to 5.000 m3",
        ["latch"] = "latch seal_lost \"Seal was lost\" set when FSL1 clear when FS1",
        ["voted"] = "voted LSHH \"Tank at high-high\" 2oo3 of LSHH1, LSHH2, LSHH3",
        ["group"] = "group VACUUM \"Vacuum system\"",
        ["fact"] = "fact READY \"Coat is ready\" when at step 50 and LT220 > 0.300 m3",
        ["count"] = "count COAT \"Coat left on the drum\" 0 .. 60.0 mm each rising SS221 takes 0.1 mm, set to 60.0 mm when at step 30",
        ["interlock"] = "interlock I1 \"Overfill\" XV101 blocked while LSHH101",
        ["pair"] = "pair DISCHARGE \"Discharge pumps\" P320A, P320B duty P320A changes over within 5 s, rotates each batch",
        ["shared"] = "shared SKID \"Acid skid\" P430, XV431",
        ["permissive"] = "permissive I4 \"Valve first\" P101 starts only with ZSO101",
        ["trip"] = "trip T1 \"Emergency stop\" when ES001 then emergency",
        ["override"] = "override of I2 at most 30 min role Maintenance \"Probe out for calibration\"",
        ["calibrate"] = "calibrate AT101 at most 30 min role Maintenance \"Probe in buffer solution\"",
        ["real"] = "real TANK101 \"What stands in the tank\" 0 .. 6.000 m3 read by LT101 within 0.050 m3, rises at most 0.20 m3/min while P101",
        ["alarm"] = "alarm A1 \"Level high\" when LT101 > 5.2 m3",
        ["assume"] = "assume A1 \"Filling rate\" LT101 rises at most 0.40 m3/min",
        ["require"] = "require H1 \"Overfill\" never XV101 and LSHH101",
        ["start"] = "start only when LT101 < 0.2 m3 \"Tank not empty\"",
        ["after"] = "after power loss held, restart begins with 60 s wait",
        ["held"] = "held at most 8 h then stop \"Held too long: the batch is given up\"",
        ["advance"] = "advance by hand role Commissioning",
        ["procedure"] = "procedure",
        ["holding"] = "holding",
        ["restarting"] = "restarting",
        ["stopping"] = "stopping",
        ["aborting"] = "aborting",
        ["step"] = "step 10 \"Fill\"",
        ["open"] = "open XV101",
        ["close"] = "close XV101",
        ["run"] = "run P101",
        ["stop"] = "stop P101",
        ["dose"] = "dose P201 pulse 4 s then wait 60 s toward AT101 at 7.50 pH, at most 35 L a batch, no 0.05 pH in 3 pulses",
        ["keep"] = "keep AG201 running until step 70",
        ["set"] = "set SC221 to 40.0 %",
        ["ramp"] = "ramp SC221 from 10.0 % to 60.0 % in 5 min",
        ["prompt"] = "prompt Q1 \"Is the spot test clear?\" answers \"clear\", \"yellow\" role Operator, limit 30 min then hold \"Nobody answered\"",
        ["record"] = "record \"pH at release\" AT101",
        ["claim"] = "claim SKID limit 30 min then hold \"Acid skid is busy\"",
        ["ask"] = "ask F220 to start",
        ["restart"] = "restart at step 80",
        ["expect"] = "expect 12 min",
        ["limit"] = "limit 30 min then hold \"Filling slow\"",
        ["go"] = "go 20 when LT101 >= 4.5 m3",
        ["join"] = "join 49, 59 to 60 when LT101 < 0.2 m3",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Words that only protections and alarms need.</summary>
    private const string ProtectionWords =
        "changes consequence deadband demand differ fewer overridden priority response role rotates suppressed votes";

    private const string StateWords = "Idle Running Complete Holding Held Restarting Stopping Stopped Aborting Aborted";

    /// <summary>All keywords; none of them is a name or a unit.</summary>
    public static FrozenSet<string> Keywords { get; } = Forms.Keys.Concat(
        ("a abort adds after alarm always amount and answered answers asked at bad batch begins between blocked clear closed commanded confirm de-energised delivers dosed driven each "
        + "else emergency everything exclusive failed falling falls finish for from held hold if in is its last latched limit loss "
        + "lowers monitored most motor never no normally not of off on once only open opposes or per power proved pulse pulses raises read reset "
        + "restart retained rises rising running safe scan scans set started starts stays step stopped switch takes the then to toward "
        + "total trip unless until usable valve value wait when while with within").Split(' ')).Concat($"{ProtectionWords} {StateWords}".Split(' ')).ToFrozenSet(StringComparer.Ordinal);

    private static readonly FrozenSet<string> NeedAName = FrozenSet.ToFrozenSet(
        ["module", "equipment", "input", "output", "reagent", "parameter", "latch", "fact", "count", "ask", "calibrate", "real", "voted", "group", "pair", "shared", "interlock", "permissive", "trip", "alarm", "assume", "require",
        "open", "close", "run", "stop", "dose", "claim", "keep", "prompt", "set", "ramp", "unit"], StringComparer.Ordinal);

    /// <summary>Whether a line that ends like this goes on on the next one.</summary>
    public static bool Continue(ReadOnlySpan<char> line) =>
        line.EndsWith(",") || EndsWithWord(line, "and") || EndsWithWord(line, "or") || EndsWithWord(line, "not") || EndsWithWord(line, "then");

    /// <summary>Whether the first words of a physical line can only begin a statement.</summary>
    public static bool Begin(ReadOnlySpan<char> line)
    {
        ReadOnlySpan<char> first = Word(line);
        if (!Forms.GetAlternateLookup<ReadOnlySpan<char>>().ContainsKey(first))
        {
            return false;
        }

        ReadOnlySpan<char> rest = line[first.Length..].TrimStart(" \t");
        ReadOnlySpan<char> second = Word(rest);
        return first switch
        {
            "after" => second is "power",
            "start" => second is "only" or "asked",
            "held" or "restart" => second is "at",
            "advance" => second is "by",
            "holding" or "restarting" or "stopping" or "aborting" => rest.IsEmpty || rest.StartsWith("--"),
            "go" => !rest[second.Length..].TrimStart(" \t0123456789").StartsWith("\""),
            _ when NeedAName.GetAlternateLookup<ReadOnlySpan<char>>().Contains(first) =>
                !second.IsEmpty && !Keywords.GetAlternateLookup<ReadOnlySpan<char>>().Contains(second),
            _ => true,
        };
    }

    private static bool EndsWithWord(ReadOnlySpan<char> line, ReadOnlySpan<char> word) =>
        line.EndsWith(word) && (line.Length == word.Length || !IsWordCharacter(line[^(word.Length + 1)]));

    private static ReadOnlySpan<char> Word(ReadOnlySpan<char> text)
    {
        int length = 0;
        while (length < text.Length && IsWordCharacter(text[length]) && !(length == 0 && char.IsAsciiDigit(text[0])))
        {
            length++;
        }

        return text[..length];
    }

    private static bool IsWordCharacter(char character) => char.IsAsciiLetterOrDigit(character) || character == '_';
}
