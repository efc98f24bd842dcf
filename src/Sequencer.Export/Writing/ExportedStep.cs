namespace Sequencer.Export.Writing;

/// <summary>
/// A step is active where its branch's variable has its value: the place in the enumerated type, whose place 0
/// says that no step of the branch is active. The copy of the branch says the same.
/// </summary>
public sealed record ExportedStep(string Unit, int Number, string Branch, string Copy, int Value);
