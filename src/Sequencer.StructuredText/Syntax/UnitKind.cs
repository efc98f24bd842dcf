namespace Sequencer.StructuredText.Syntax;

/// <summary>The kinds of program organisation unit.</summary>
public enum UnitKind
{
    Function,
    FunctionBlock,
    Program,
}
