using Sequencer.Text;

namespace Sequencer.Export.Equivalence;

/// <summary>What is known about the text of one unit against its program.</summary>
public abstract record EqualityResult(string Unit);

/// <summary>
/// In every scan of every run the text does what the program does. <see cref="Certificate"/> is an SMT-LIB text by
/// which any solver can check it.
/// </summary>
/// <param name="Unit">The unit.</param>
/// <param name="Compared">How many outputs, alarms and variables are the same.</param>
/// <param name="Certificate">About both systems side by side; the three answers must be <c>unsat</c>.</param>
public sealed record ProvedEqual(string Unit, int Compared, string Certificate) : EqualityResult(Unit);

/// <summary>A run in which they differ; it has been replayed.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Difference">The first scan that differs, one variable of it and both values.</param>
/// <param name="InProgram">Where the program says it.</param>
/// <param name="InText">Where the text declares it.</param>
public sealed record ProvedDifferent(string Unit, LockstepDifference Difference, SourceSpan InProgram, SourceSpan InText) : EqualityResult(Unit);

/// <summary>Neither is known. Never to be shown as success.</summary>
public sealed record EqualityUndecided(string Unit, string Reason) : EqualityResult(Unit);
