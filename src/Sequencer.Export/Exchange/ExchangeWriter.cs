using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using Sequencer.StructuredText.Parsing;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.Export.Exchange;

/// <summary>
/// Structured text as a file for the exchange of programs by IEC 61131-10 (XML): declarations as elements, bodies as text. Made from the written
/// text, so that both hold the same. Names of elements and attributes are from memory, and were checked against no schema.
/// </summary>
public static partial class ExchangeWriter
{
    private const string Caution = """
         An exchange file in the form of IEC 61131-10, from memory: neither the standard nor its schema was at hand, and no other tool
         has read it. It holds what the structured text of the same name beside it holds, and that is what was proved equal to
         the programs. For review: it replaces no hazard study and no functional-safety assessment to IEC 61511; local codes and licensed practice decide.
         No time of creation is given: the same site gives the same file. 
        """;

    /// <summary>The whole file.</summary>
    /// <param name="site">The site's name.</param>
    /// <param name="revision">The site's revision.</param>
    /// <param name="text">Structured text of ours.</param>
    /// <exception cref="ArgumentException">The text has mistakes.</exception>
    public static string Write(string site, string revision, string text)
    {
        SourceText source = new("text.st", text);
        DiagnosticBag diagnostics = new();
        SourceFileSyntax file = StructuredTextParser.Parse(source, diagnostics);
        if (diagnostics.HasErrors)
        {
            throw new ArgumentException(DiagnosticRenderer.Render(diagnostics.InOrder()));
        }

        XDocument document = new(
            new XComment(Clean(Caution)),
            Element(
                "Project",
                new XAttribute(XNamespace.Xmlns + "xsi", ExchangeNames.Instance),
                new XAttribute("schemaVersion", "1.0"),
                Element("FileHeader", new XAttribute("companyName", ""), new XAttribute("productName", "sequencer"), new XAttribute("productVersion", "1")),
                Element("ContentHeader", [new XAttribute("name", Clean(site)), new XAttribute("version", Clean(revision)), .. Documentation(Comments(text[..Head(text)]))]),
                Element("Types", Element("GlobalNamespace", Declarations(file).ToArray<object>())),
                Element("Instances", [.. file.Declarations.OfType<ConfigurationSyntax>().Select(Configuration)])));
        return Print(document);
    }

    private static IEnumerable<XElement> Declarations(SourceFileSyntax file)
    {
        int before = Head(file.Source.Content);
        foreach (DeclarationSyntax declaration in file.Declarations)
        {
            string words = Comments(file.Source.Content[Math.Min(before, declaration.Span.Span.Start)..declaration.Span.Span.Start]);
            before = declaration.Span.Span.End;
            switch (declaration)
            {
                case TypeDeclarationSyntax type:
                    yield return Element("DataTypeDecl", Name(type.Name), Documentation(words), Specification("UserDefinedTypeSpec", type.Type));
                    break;
                case UnitSyntax unit:
                    yield return Unit(unit, words);
                    break;
            }
        }
    }

    /// <summary>Where the head of the first block begins; what stands before it is of the whole text.</summary>
    private static int Head(string text) => Math.Max(0, text.IndexOf("(* ====", StringComparison.Ordinal));

    private static XElement Unit(UnitSyntax unit, string words)
    {
        List<object> content = [Name(unit.Name), .. Documentation(words)];
        if (unit.ReturnType is { } result)
        {
            content.Add(Element("ResultType", Type(result)));
        }

        int order = 0;
        VariableSectionSyntax[] parameters = [.. unit.Sections.Where(IsParameter)];
        if (parameters.Length > 0)
        {
            content.Add(Element("Parameters", [.. parameters.Select(section => Section(section, () => new XAttribute("orderWithinParamSet", order++)))]));
        }

        content.AddRange(unit.Sections.Where(section => !IsParameter(section)).Select(section => Section(section, () => null)));
        content.Add(Element("MainBody", Element("BodyContent", Kind("ST"), Element("ST", Body(unit)))));
        return Element(unit.Kind.ToString(), [.. content]);
    }

    private static bool IsParameter(VariableSectionSyntax section) =>
        section.Kind is VariableSectionKind.Input or VariableSectionKind.Output or VariableSectionKind.InOut;

    private static XElement Section(VariableSectionSyntax section, Func<XAttribute?> more)
    {
        string name = ExchangeNames.Sections[section.Kind];
        return Element(
            name,
            [
                .. section.Retention == Retention.Retain ? [new XAttribute("retain", "true")] : Array.Empty<object>(),
                .. section.IsConstant ? [new XAttribute("constant", "true")] : Array.Empty<object>(),
                .. section.Variables.Select((variable, index) => Variable(section, index, more())),
            ]);
    }

    private static XElement Variable(VariableSectionSyntax section, int index, XAttribute? more)
    {
        VariableSyntax variable = section.Variables[index];
        List<object> content = [Name(variable.Name)];
        if (more is not null)
        {
            content.Add(more);
        }

        content.AddRange(Documentation(Comments(Rest(section, index))));
        content.Add(Element("Type", Type(variable.Type)));
        if (variable.Initial is { } initial)
        {
            content.Add(Element("InitialValue", Element("SimpleValue", new XAttribute("value", Words(initial.Span)))));
        }

        if (variable.Address is { } address)
        {
            content.Add(Element("Address", new XAttribute("address", address.Text)));
        }

        return Element("Variable", [.. content]);
    }

    /// <summary>The line behind a declaration, where its remark stands.</summary>
    private static string Rest(VariableSectionSyntax section, int index)
    {
        string text = section.Span.Source.Content;
        int start = section.Variables[index].Name.Span.Span.End;
        int end = text.IndexOf('\n', start);
        return text[start..(end < 0 ? text.Length : end)];
    }

    private static XElement Type(TypeSyntax type) => type is NamedTypeSyntax named
        ? Element("TypeName", named.Name.Text)
        : Specification("InstantlyDefinedType", type);

    private static XElement Specification(string element, TypeSyntax type) => type switch
    {
        EnumerationTypeSyntax enumeration => Element(
            element, [Kind("EnumTypeSpec"), .. enumeration.Values.Select(value => Element("Enumerator", Name(value.Name)))]),
        SubrangeTypeSyntax subrange => Element(
            element,
            Kind("SubrangeTypeSpec"),
            Element("BaseType", Element("TypeName", subrange.Base.Text)),
            Element("Range", new XAttribute("lower", Words(subrange.Lower.Span)), new XAttribute("upper", Words(subrange.Upper.Span)))),
        _ => throw new ArgumentException($"{type.Span}: a type that our text has not"),
    };

    private static XElement Configuration(ConfigurationSyntax configuration)
    {
        ResourceSyntax resource = configuration.Resources[0];
        return Element(
            "Configuration",
            [
                Name(configuration.Name),
                .. configuration.Globals.Select(section => Section(section, () => null)),
                Element(
                    "Resource",
                    [
                        Name(resource.Name),
                        new XAttribute("resourceTypeName", resource.Processor.Text),
                        .. configuration.Tasks.Select(task => Element("Task", [Name(task.Name), .. task.Arguments.Select(Argument)])),
                        .. configuration.Programs.Select(program => Element(
                            "ProgramInstance",
                            [
                                Name(program.Name),
                                new XAttribute("typeName", program.Type.Text),
                                .. program.Task is { } task ? [new XAttribute("associatedTaskName", task.Text)] : Array.Empty<object>(),
                            ])),
                    ]),
            ]);
    }

    private static XAttribute Argument(ArgumentSyntax argument) =>
        new(argument.Name?.Text.ToLowerInvariant() ?? throw new ArgumentException("an argument of a task has a name"), Words(argument.Span)[(Words(argument.Span).IndexOf(":=", StringComparison.Ordinal) + 2)..].Trim());

    /// <summary>From behind the declarations to the word that ends the unit.</summary>
    private static XText Body(UnitSyntax unit)
    {
        string text = unit.Span.Source.Content;
        int start = unit.Sections.IsEmpty ? (unit.ReturnType?.Span ?? unit.Name.Span).Span.End : unit.Sections[^1].Span.Span.End;
        int end = text.LastIndexOf("END_", unit.Span.Span.End - 1, StringComparison.Ordinal);
        string body = Clean(text[start..end]);
        return body.Contains("]]>", StringComparison.Ordinal) ? new XText(body) : new XCData(body);
    }

    private static string Comments(string between) =>
        string.Join('\n', Comment().Matches(between).Select(match => match.Groups[1].Value.Trim()).Where(line => line.Trim('=', '-').Length > 0));

    private static object[] Documentation(string words) =>
        words.Length == 0 ? [] : [Element("Documentation", Kind("SimpleText"), Clean(words))];

    private static string Words(SourceSpan span) => Comment().Replace(span.Text.ToString(), "").Trim();

    private static XAttribute Name(NameSyntax name) => new("name", name.Text);

    private static XAttribute Kind(string kind) => new(ExchangeNames.Instance + "type", kind);

    private static XElement Element(string name, params object[] content) => new(ExchangeNames.Space + name, content);

    /// <summary>What an author wrote may hold what XML cannot.</summary>
    private static string Clean(string words) => string.Concat(words.EnumerateRunes().Select(rune =>
        rune.Value > char.MaxValue || XmlConvert.IsXmlChar((char)rune.Value) ? rune.ToString() : "\uFFFD"));

    private static string Print(XDocument document)
    {
        using MemoryStream stream = new();
        XmlWriterSettings settings = new() { Indent = true, NewLineChars = "\n", Encoding = new UTF8Encoding(false), NewLineHandling = NewLineHandling.None };
        using (XmlWriter writer = XmlWriter.Create(stream, settings))
        {
            document.Save(writer);
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    [GeneratedRegex(@"\(\*(.*?)\*\)", RegexOptions.Singleline)]
    private static partial Regex Comment();
}
