using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Instruments;

/// <summary>
/// The running and limit-switch contacts of drives, looked at only while their drive moves: most stand or run most of the time.
/// </summary>
internal sealed class Feedbacks
{
    private readonly Func<double> _now;
    private readonly Action _changed;
    private readonly List<ContactInstrument> _contacts = [];
    private readonly List<Feedback> _moving = [];

    /// <param name="drives">All drives of the plant.</param>
    /// <param name="now">Time, s.</param>
    /// <param name="changed">Called where a contact may have turned.</param>
    public Feedbacks(IEnumerable<Drive> drives, Func<double> now, Action changed)
    {
        _now = now;
        _changed = changed;
        foreach (Drive drive in drives)
        {
            Feedback feedback = new(drive, [.. Contacts(drive)]);
            _contacts.AddRange(feedback.Contacts);
            drive.Changed += () => Follow(feedback);
        }
    }

    public IReadOnlyList<ContactInstrument> All => _contacts;

    public void Look()
    {
        double now = _now();
        for (int index = _moving.Count - 1; index >= 0; index--)
        {
            Feedback feedback = _moving[index];
            Array.ForEach(feedback.Contacts, contact => contact.Look());
            if (now >= feedback.Drive.RestsFrom)
            {
                feedback.IsFollowed = false;
                _moving.RemoveAt(index);
            }
        }
    }

    private void Follow(Feedback feedback)
    {
        if (!feedback.IsFollowed)
        {
            feedback.IsFollowed = true;
            _moving.Add(feedback);
        }
    }

    private IEnumerable<ContactInstrument> Contacts(Drive drive)
    {
        if (drive.Description.OnSwitch is { } on)
        {
            yield return new ContactInstrument(on, false, () => drive.OnSwitch(_now()), _changed);
        }

        if (drive.Description.OffSwitch is { } off)
        {
            yield return new ContactInstrument(off, false, () => drive.OffSwitch(_now()), _changed);
        }
    }

    private sealed class Feedback(Drive drive, ContactInstrument[] contacts)
    {
        public Drive Drive => drive;

        public ContactInstrument[] Contacts => contacts;

        public bool IsFollowed { get; set; }
    }
}
