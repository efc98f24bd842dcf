namespace Sequencer.Language.Programs;

public enum ReagentEffect
{
    Raises,
    Lowers,
}
