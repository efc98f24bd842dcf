using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>Gives the text of a library; null, with a diagnostic at the place that names it, where that cannot be done.</summary>
/// <param name="file">The name as written, from the site's folder on.</param>
/// <param name="named">Where it is written.</param>
/// <param name="diagnostics">Where mistakes go.</param>
public delegate SourceText? LibraryReader(string file, SourceSpan named, DiagnosticBag diagnostics);
