namespace Sequencer.Export.Writing;

/// <summary>The edition of IEC 61131-3 whose rules the text keeps to.</summary>
public enum TextEdition
{
    /// <summary>A CASE label may be a constant expression.</summary>
    Third,

    /// <summary>A CASE label is a literal or a value of an enumerated type, and a configuration has one VAR_GLOBAL. The clauses are from memory.</summary>
    Second,
}
