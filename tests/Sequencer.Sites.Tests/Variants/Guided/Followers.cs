using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Simulation.Traces;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>The contacts that confirm a device: in most runs they follow its output after a while, in some they do as they like.</summary>
internal sealed class Followers
{
    private const int PercentObeying = 93;

    private readonly Device[] _devices;
    private readonly Random _random;

    public Followers(LoadedSite site, TransitionSystem system, ImmutableArray<TraceInput> inputs, Random random)
    {
        _random = random;
        _devices = [.. from unit in site.Programs.Units
                       from output in unit.Outputs
                       where output.Confirmation is not null
                       let place = system.Outputs.Select((one, index) => (one.Name, index)).First(one => one.Name == output.Tag).index
                       select new Device(
                           place,
                           Contact(output.Confirmation!.On),
                           Contact(output.Confirmation.Off),
                           Math.Max(1, output.Confirmation.Within.Scans(system.ScanMilliseconds)))];

        (int Input, long So) Contact(SwitchInput? of)
        {
            TraceInput? found = of is null ? null : inputs.FirstOrDefault(input => input.Kind == TraceInputKind.Contact && input.Tag == of.Tag);
            return found is null ? (-1, 0) : (found.Variable.Index, 1 - found.Rest);
        }
    }

    /// <summary>Whether some device leads the input in this episode.</summary>
    public bool Leads(int input)
    {
        foreach (Device device in _devices)
        {
            if (device.Obeys && (device.On.Input == input || device.Off.Input == input))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Draws which devices obey, and how slowly, in the coming episode.</summary>
    public void Begin()
    {
        foreach (Device device in _devices)
        {
            device.Obeys = _random.Next(100) < PercentObeying;
            device.Delay = _random.NextInt64(1, device.Within + 1);
            device.Last = -1;
            device.Due = long.MaxValue;
        }
    }

    /// <summary>After a scan: contacts move as the outputs told some scans ago.</summary>
    public void Follow(long scan, long[] outputs, long[] inputs)
    {
        foreach (Device device in _devices)
        {
            long now = outputs[device.Output];
            if (device.Last < 0)
            {
                device.Last = now;
                device.Due = scan + device.Delay;
            }

            if (now != device.Last)
            {
                device.Last = now;
                device.Due = scan + device.Delay;
                Move(device.Off, inputs, false);
                Move(device.On, inputs, false);
            }

            if (scan >= device.Due)
            {
                device.Due = long.MaxValue;
                Move(now != 0 ? device.On : device.Off, inputs, true);
            }

            void Move((int Input, long So) contact, long[] all, bool so)
            {
                if (device.Obeys && contact.Input >= 0)
                {
                    all[contact.Input] = so ? contact.So : 1 - contact.So;
                }
            }
        }
    }

    private sealed class Device(int output, (int Input, long So) on, (int Input, long So) off, long within)
    {
        public int Output => output;

        public (int Input, long So) On => on;

        public (int Input, long So) Off => off;

        public long Within => within;

        public bool Obeys { get; set; }

        public long Delay { get; set; }

        public long Last { get; set; }

        public long Due { get; set; }
    }
}
