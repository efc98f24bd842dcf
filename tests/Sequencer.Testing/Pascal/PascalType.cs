namespace Sequencer.Testing.Pascal;

public enum PascalKind
{
    Boolean,
    Integer,
    Enumeration,
    Compound,
    Block,
}

/// <summary>A type as Free Pascal has it, and the value of a variable that is given none.</summary>
public sealed record PascalType(string Text, PascalKind Kind, string Default)
{
    /// <summary>Elementary types by their name in structured text; a duration is whole milliseconds.</summary>
    internal static Dictionary<string, PascalType> Elementary() => new(StringComparer.OrdinalIgnoreCase)
    {
        ["BOOL"] = new("Boolean", PascalKind.Boolean, "False"),
        ["SINT"] = Integer("ShortInt"),
        ["INT"] = Integer("SmallInt"),
        ["DINT"] = Integer("LongInt"),
        ["USINT"] = Integer("Byte"),
        ["UINT"] = Integer("Word"),
        ["UDINT"] = Integer("LongWord"),
        ["TIME"] = Integer("LongInt"),
        ["TON"] = Block("TON"),
        ["TOF"] = Block("TOF"),
        ["TP"] = Block("TP"),
        ["R_TRIG"] = Block("R_TRIG"),
        ["F_TRIG"] = Block("F_TRIG"),
        ["SR"] = Block("SR"),
        ["RS"] = Block("RS"),
        ["CTU"] = Block("CTU"),
        ["CTD"] = Block("CTD"),
        ["CTUD"] = Block("CTUD"),
    };

    internal static PascalType Block(string name) => new($"v_{name}", PascalKind.Block, "");

    private static PascalType Integer(string text) => new(text, PascalKind.Integer, "0");
}
