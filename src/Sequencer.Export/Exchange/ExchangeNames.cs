using System.Collections.Frozen;
using System.Xml.Linq;
using Sequencer.StructuredText.Syntax;

namespace Sequencer.Export.Exchange;

/// <summary>Names of IEC 61131-10, from memory.</summary>
public static class ExchangeNames
{
    /// <summary>The namespace of the standard's elements.</summary>
    public static readonly XNamespace Space = "www.iec.ch/public/TC65SC65BWG7TF10";

    /// <summary>The namespace in which an element says which of several kinds it is (W3C XML Schema, part 1).</summary>
    public static readonly XNamespace Instance = "http://www.w3.org/2001/XMLSchema-instance";

    /// <summary>The element of each section of variables.</summary>
    public static FrozenDictionary<VariableSectionKind, string> Sections { get; } = new Dictionary<VariableSectionKind, string>
    {
        [VariableSectionKind.Input] = "InputVars",
        [VariableSectionKind.Output] = "OutputVars",
        [VariableSectionKind.InOut] = "InoutVars",
        [VariableSectionKind.Local] = "Vars",
        [VariableSectionKind.Temporary] = "TempVars",
        [VariableSectionKind.External] = "ExternalVars",
        [VariableSectionKind.Global] = "GlobalVars",
    }.ToFrozenDictionary();
}
