using Sequencer.Language.Programs;
using Sequencer.Lowering.Supposing;

namespace Sequencer.Lowering;

/// <summary>One scan of all units of a site: where one unit finds another.</summary>
internal sealed class SiteScan
{
    private readonly Dictionary<string, UnitScan> _units = new(StringComparer.Ordinal);

    private readonly Dictionary<string, ClaimQueue> _queues = new(StringComparer.Ordinal);

    public SiteScan(SiteProgram program, Supposition supposed)
    {
        Program = program;
        Supposed = supposed;
        System = new SystemBuilder(program.ScanMilliseconds);
        Forces = new Forces(this);
        Failing = new Failing(this);
        foreach ((UnitProgram unit, SharedEquipment equipment) in program.Shared)
        {
            _queues.Add(QualifiedName.Of(unit.Name, equipment.Name), new ClaimQueue(this, unit, equipment));
        }

        foreach (UnitProgram unit in program.Units)
        {
            _units.Add(unit.Name, new UnitScan(this, unit));
        }
    }

    public SystemBuilder System { get; }

    public SiteProgram Program { get; }

    public Supposition Supposed { get; }

    /// <summary>What has failed.</summary>
    public Failing Failing { get; }

    /// <summary>Which protections are in force.</summary>
    public Forces Forces { get; }

    /// <summary>In the order of <c>site.yaml</c>.</summary>
    public IEnumerable<UnitScan> Units => Program.Units.Select(unit => _units[unit.Name]);

    public IEnumerable<ClaimQueue> Queues => _queues.Values;

    /// <summary>The queue for shared equipment, by its name with that of the unit that declares it.</summary>
    public ClaimQueue Queue(string equipment) => _queues[equipment];

    public UnitScan Unit(string name) => _units[name];
}
