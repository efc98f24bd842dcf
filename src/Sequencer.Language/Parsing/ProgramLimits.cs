namespace Sequencer.Language.Parsing;

/// <summary>
/// How much the checker takes: enough for any real unit, little enough that hostile or damaged files end in a
/// diagnostic instead of exhausting memory or the stack. Stated in spec/language.md.
/// </summary>
public static class ProgramLimits
{
    /// <summary>Room for 100,000 lines of 160 bytes.</summary>
    public const int FileBytes = 16 * 1024 * 1024;

    /// <summary>Characters of one logical line.</summary>
    public const int LineCharacters = 8_000;

    /// <summary>Round brackets open at once; the grammar's recursion is this deep at most.</summary>
    public const int BracketDepth = 64;

    /// <summary>Height of the tree of one condition or amount: what every later walk may recurse to.</summary>
    public const int ExpressionDepth = 300;

    /// <summary>Digits of one number: beyond any instrument, and exact in 64 bits.</summary>
    public const int NumberDigits = 15;

    /// <summary>Modules in modules: more would hide from a reader what a line stands for.</summary>
    public const int ModuleDepth = 8;

    /// <summary>Lines that are no statements, in one file, before the checker stops reading it.</summary>
    public const int MalformedLines = 1_000;

    /// <summary>Characters kept in each of the two generations of a <see cref="ParseCache"/>.</summary>
    public const int CachedCharacters = 16 * 1024 * 1024;
}
