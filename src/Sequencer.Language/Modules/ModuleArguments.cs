using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>Whether the arguments of an equipment are those that its module asks for.</summary>
internal static class ModuleArguments
{
    /// <summary>Reports SEQ0261 to SEQ0264; true where there was nothing to report.</summary>
    public static bool Check(EquipmentSyntax equipment, Module module, Func<SyntaxNode, SourceSpan> at, DiagnosticBag diagnostics)
    {
        List<Diagnostic> found = [];
        HashSet<string> given = new(StringComparer.Ordinal);
        foreach (ArgumentSyntax argument in equipment.Arguments)
        {
            string name = argument.Parameter.Text;
            if (!given.Add(name))
            {
                found.Add(ModuleDiagnostics.NamedTwice(at(argument.Parameter), name));
            }
            else if (module.Parameter(name) is not { } parameter)
            {
                string? near = NearestWord.Find(name, module.Syntax.Parameters.Select(each => each.Name.Text));
                IEnumerable<string> free = module.Syntax.Parameters.Select(each => each.Name.Text).Where(each => equipment.Arguments.All(other => other.Parameter.Text != each));
                found.Add(ModuleDiagnostics.UnknownParameter(at(argument.Parameter), name, module, near) with
                {
                    Fix = Fix.Replace(at(argument.Parameter), NearestWord.Only(name, free)),
                });
            }
            else if (parameter.Kind.Text != argument.Kind)
            {
                found.Add(ModuleDiagnostics.WrongKindOfArgument(at(argument), name, InWords(parameter.Kind.Text), module));
            }
        }

        foreach (ModuleParameterSyntax parameter in module.Syntax.Parameters.Where(parameter => !given.Contains(parameter.Name.Text)))
        {
            found.Add(ModuleDiagnostics.ArgumentMissing(at(equipment.Name), equipment.Name.Text, parameter.Name.Text, InWords(parameter.Kind.Text), module));
        }

        diagnostics.AddRange(found);
        return found.Count == 0;
    }

    private static string InWords(string kind) => kind switch
    {
        "address" => "an address such as `%IX0.3`",
        "text" => "a text in double quotes",
        "quantity" => "a number with its unit, such as `12 L/h`",
        "number" => "a number without a unit",
        _ => "a name",
    };
}
