using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>What can be wrong with libraries, modules and the equipment made from them: SEQ0140 to SEQ0142 and SEQ0260 to SEQ0271.</summary>
internal static class ModuleDiagnostics
{
    public static Diagnostic LibraryFirst(SourceSpan span) => Error(
        "SEQ0140",
        span,
        "a library begins with `library 1`",
        "a later version of the language may read the same words otherwise",
        "put `library 1` before everything else, or check with a newer tool");

    public static Diagnostic OutsideModule(SourceSpan span) => Error(
        "SEQ0141",
        span,
        "this line stands in a library, but in no module",
        "it would belong to no unit, and nothing would be controlled by it",
        "move it below `module NAME(...)`, or into the unit's program");

    public static Diagnostic NoDeclaration(SourceSpan span) => Error(
        "SEQ0142",
        span,
        "a module holds declarations and equipment only",
        "steps, start conditions and the restart are decided once for a unit, in its own program",
        "move the line into the unit's program; `use` stands before the modules");

    public static Diagnostic UnknownModule(SourceSpan span, string module, Module? near) => Error(
        "SEQ0260",
        span,
        $"no module is named `{module}` in the libraries used here",
        "the equipment would lack its signals and its protection",
        near is null ? "name a module of a library, and the library with `use`" : $"did you mean `{near.Name}`?") with
    {
        Notes = near is null ? [] : [new RelatedNote(near.Span, $"`{near.Name}` stands here")],
    };

    public static Diagnostic ArgumentMissing(SourceSpan span, string equipment, string parameter, string kind, Module module) => Error(
        "SEQ0261",
        span,
        $"`{equipment}` does not say what `{parameter}` is",
        "the module's lines would have a gap where it stands",
        $"add `{parameter} = ...` with {kind}") with
    {
        Notes = [new RelatedNote(module.Span, $"`{module.Name}` has the parameter `{parameter}`")],
    };

    public static Diagnostic NamedTwice(SourceSpan span, string parameter) => Error(
        "SEQ0262",
        span,
        $"the parameter `{parameter}` is named twice",
        "only one of the two could be meant, and a reader cannot tell which",
        "delete or rename one of them");

    public static Diagnostic UnknownParameter(SourceSpan span, string parameter, Module module, string? near) => Error(
        "SEQ0263",
        span,
        $"`{module.Name}` has no parameter `{parameter}`",
        "what is said here would have no effect",
        near is null ? "delete it, or give the module such a parameter" : $"did you mean `{near}`?") with
    {
        Notes = [new RelatedNote(module.Span, $"`{module.Name}` stands here")],
    };

    public static Diagnostic WrongKindOfArgument(SourceSpan span, string parameter, string needed, Module module) => Error(
        "SEQ0264",
        span,
        $"`{parameter}` needs {needed}",
        "the module's lines could not be read with it",
        $"write {needed}") with
    {
        Notes = [new RelatedNote(module.Span, $"`{module.Name}` stands here")],
    };

    public static Diagnostic ContainsItself(SourceSpan span, string module, string way) => Error(
        "SEQ0265",
        span,
        $"`{module}` contains itself: {way}",
        "it would have no end",
        "take the equipment out of the module, or write a module of its own for it");

    public static Diagnostic TwoModules(SourceSpan span, Module first) => Error(
        "SEQ0266",
        span,
        $"two modules are named `{first.Name}`",
        "it would be open which of them protects the equipment",
        "give one of them another name") with
    {
        Notes = [new RelatedNote(first.Span, "the first one")],
    };

    public static Diagnostic ForeignName(SourceSpan span, string module, string name, string? near) => Error(
        "SEQ0267",
        span,
        $"`{module}` neither declares `{name}` nor has a parameter of that name",
        "in another unit the same module would speak of something else, or of nothing",
        near is null ? $"give the module a parameter, `name {name}`" : $"did you mean `{near}`?");

    public static Diagnostic TooMuch(SourceSpan span, string limit) => Error(
        "SEQ0268",
        span,
        $"the unit's modules are too much for the checker: {limit}",
        "a review of so much text would be worth little",
        "divide the unit, or put fewer modules into modules");

    public static Diagnostic NoLibraries(SourceSpan span, string file) => Error(
        "SEQ0269",
        span,
        $"the library `{file}` cannot be looked for: the program is checked by itself",
        "its modules belong to the program",
        "check the site that the program belongs to");

    public static Diagnostic UnusedParameter(SourceSpan span, string parameter, string module) => Warning(
        "SEQ0270",
        span,
        $"no line of `{module}` speaks of its parameter `{parameter}`",
        "whoever gives a value for it believes that it does something",
        "use it, or delete it here and where equipment is made from the module");

    public static Diagnostic UselessUse(SourceSpan span, string file, bool isUsedAbove) => Warning(
        "SEQ0271",
        span,
        $"`use` of `{file}` changes nothing: {(isUsedAbove ? "the library is used above already" : "no equipment is made from a module of it")}",
        "a reviewer looks for what it would bring along",
        "delete the line") with
    {
        Fix = isUsedAbove && UseOf(span) is { } use ? Fix.DeleteStatement(use) : null,
    };

    /// <summary>The statement whose file name stands at a place; null where other words stand between.</summary>
    private static SourceSpan? UseOf(SourceSpan file)
    {
        int word = file.Source.Content.LastIndexOf("use", file.Span.Start, StringComparison.Ordinal);
        return word >= 0 && file.Source.Content[(word + 3)..file.Span.Start].Trim(' ', '\t').Length == 0
            ? new SourceSpan(file.Source, TextSpan.Between(word, file.Span.End))
            : null;
    }

    private static Diagnostic Warning(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Warning, span, message, reason, mend);

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
