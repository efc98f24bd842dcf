using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>A program, or an instance of a function block or a function, with its members by name.</summary>
internal sealed class BlockInstance : Member
{
    public BlockInstance(string path, string type, UnitSyntax? unit, VariableSectionKind section, Origin origin)
        : base(section, origin)
    {
        Path = path;
        Type = type;
        Unit = unit;
    }

    /// <summary>Empty for the program itself.</summary>
    public string Path { get; }

    public string Type { get; }

    /// <summary>Null for a standard timer, which has no text.</summary>
    public UnitSyntax? Unit { get; }

    public Dictionary<string, Member> Members { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The names in written order.</summary>
    public List<string> Order { get; } = [];

    /// <summary>The block that it is a variable of; null where nothing calls that.</summary>
    public BlockInstance? Owner { get; init; }

    /// <summary>Where it is first called.</summary>
    public SourceSpan? FirstCall { get; set; }

    public bool IsCalled => FirstCall is not null;

    /// <summary>Whether it was called in this scan, noted like a variable.</summary>
    public Slot? Called { get; init; }

    public string FullName(string member) => Path.Length == 0 ? member : $"{Path}.{member}";

    public void Add(string name, Member member)
    {
        Members.Add(name, member);
        Order.Add(name);
    }

    public Slot Slot(string name) => (Slot)Members[name];
}
