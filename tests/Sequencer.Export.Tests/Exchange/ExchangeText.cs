using System.Text;
using System.Xml.Linq;
using Sequencer.Export.Exchange;
using Sequencer.StructuredText.Syntax;

namespace Sequencer.Export.Tests.Exchange;

/// <summary>Structured text again from an exchange file.</summary>
internal static class ExchangeText
{
    private static readonly Dictionary<string, string> Words = ExchangeNames.Sections.ToDictionary(section => section.Value, section => section.Key switch
    {
        VariableSectionKind.Input => "VAR_INPUT",
        VariableSectionKind.Output => "VAR_OUTPUT",
        VariableSectionKind.InOut => "VAR_IN_OUT",
        VariableSectionKind.Temporary => "VAR_TEMP",
        VariableSectionKind.External => "VAR_EXTERNAL",
        VariableSectionKind.Global => "VAR_GLOBAL",
        _ => "VAR",
    });

    public static string Of(string file)
    {
        XElement project = XDocument.Parse(file, LoadOptions.PreserveWhitespace).Root!;
        StringBuilder text = new();
        foreach (XElement declaration in Child(Child(project, "Types"), "GlobalNamespace").Elements())
        {
            switch (declaration.Name.LocalName)
            {
                case "DataTypeDecl":
                    text.Append("TYPE ").Append(Name(declaration)).Append(" : ").Append(Specification(Child(declaration, "UserDefinedTypeSpec"))).Append("; END_TYPE\n");
                    break;
                case "Function":
                    Unit(text, declaration, "FUNCTION", $" : {Type(Child(declaration, "ResultType"))}");
                    break;
                case "FunctionBlock":
                    Unit(text, declaration, "FUNCTION_BLOCK", "");
                    break;
                default:
                    Unit(text, declaration, "PROGRAM", "");
                    break;
            }
        }

        XElement configuration = Child(Child(project, "Instances"), "Configuration");
        XElement resource = Child(configuration, "Resource");
        text.Append("CONFIGURATION ").Append(Name(configuration)).Append('\n');
        Sections(text, configuration);
        text.Append("RESOURCE ").Append(Name(resource)).Append(" ON ").Append(Attribute(resource, "resourceTypeName")).Append('\n');
        XElement task = Child(resource, "Task");
        text.Append("TASK ").Append(Name(task)).Append("(INTERVAL := ").Append(Attribute(task, "interval")).Append(", PRIORITY := ").Append(Attribute(task, "priority")).Append(");\n");
        XElement program = Child(resource, "ProgramInstance");
        text.Append("PROGRAM ").Append(Name(program)).Append(" WITH ").Append(Attribute(program, "associatedTaskName")).Append(" : ").Append(Attribute(program, "typeName")).Append(";\n");
        return text.Append("END_RESOURCE\nEND_CONFIGURATION\n").ToString();
    }

    private static void Unit(StringBuilder text, XElement unit, string word, string result)
    {
        text.Append(word).Append(' ').Append(Name(unit)).Append(result).Append('\n');
        foreach (XElement parameters in unit.Elements(ExchangeNames.Space + "Parameters"))
        {
            Sections(text, parameters);
        }

        Sections(text, unit);
        XElement body = Child(Child(unit, "MainBody"), "BodyContent");
        Assert.Equal("ST", body.Attribute(ExchangeNames.Instance + "type")?.Value);
        text.Append(Child(body, "ST").Value).Append("\nEND_").Append(word).Append('\n');
    }

    private static void Sections(StringBuilder text, XElement parent)
    {
        foreach (XElement section in parent.Elements().Where(element => Words.ContainsKey(element.Name.LocalName)))
        {
            text.Append(Words[section.Name.LocalName])
                .Append(section.Attribute("retain")?.Value == "true" ? " RETAIN" : "")
                .Append(section.Attribute("constant")?.Value == "true" ? " CONSTANT" : "")
                .Append('\n');
            foreach (XElement variable in section.Elements())
            {
                XElement? address = variable.Element(ExchangeNames.Space + "Address");
                XElement? initial = variable.Element(ExchangeNames.Space + "InitialValue");
                text.Append(Name(variable)).Append(address is null ? "" : $" AT {Attribute(address, "address")}").Append(" : ").Append(Type(Child(variable, "Type")))
                    .Append(initial is null ? "" : $" := {Attribute(Child(initial, "SimpleValue"), "value")}").Append(";\n");
            }

            text.Append("END_VAR\n");
        }
    }

    private static string Type(XElement of)
    {
        XElement type = Assert.Single(of.Elements());
        return type.Name.LocalName == "TypeName" ? type.Value : Specification(type);
    }

    private static string Specification(XElement type)
    {
        if (type.Attribute(ExchangeNames.Instance + "type")?.Value == "EnumTypeSpec")
        {
            return $"({string.Join(", ", type.Elements(ExchangeNames.Space + "Enumerator").Select(Name))})";
        }

        XElement range = Child(type, "Range");
        return $"{Type(Child(type, "BaseType"))}({Attribute(range, "lower")}..{Attribute(range, "upper")})";
    }

    private static XElement Child(XElement parent, string name) => Assert.Single(parent.Elements(ExchangeNames.Space + name));

    private static string Name(XElement element) => Attribute(element, "name");

    private static string Attribute(XElement element, string name) =>
        element.Attribute(name)?.Value ?? throw new InvalidOperationException($"{element.Name.LocalName} has no {name}");
}
