using Sequencer.Language.Syntax;

namespace Sequencer.Language.Binding;

/// <summary>The words of valves and those of motors.</summary>
internal static class DeviceWords
{
    /// <summary>Whether the verb or position (null fits all) is one for the device; if not, that is reported.</summary>
    public static bool Fits(BindingContext context, Symbol output, WordSyntax? word, LinePlace place, bool verb = false)
    {
        if (word is null)
        {
            return true;
        }

        bool forValve = word.Text is "open" or "closed" or "close";
        if (forValve == (output.Kind == SymbolKind.Valve))
        {
            return true;
        }

        context.Report(NameDiagnostics.WrongWord(place.At(word), output, Counterpart(word.Text, verb)));
        return false;
    }

    /// <summary>Whether the word means that the device is on.</summary>
    public static bool MeansOn(WordSyntax word) => word.Text is "open" or "running" or "run";

    private static string Counterpart(string word, bool verb) => word switch
    {
        "open" => verb ? "run" : "running",
        "close" => "stop",
        "closed" => "stopped",
        "run" or "running" => "open",
        "stop" => "close",
        _ => "closed",
    };
}
