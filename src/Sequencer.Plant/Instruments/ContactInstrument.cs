namespace Sequencer.Plant.Instruments;

/// <summary>A contact to the controller: the fact it stands for, its polarity, and what has failed in it.</summary>
/// <param name="tag">of the contact</param>
/// <param name="normallyClosed">whether it is made where its fact is not so</param>
/// <param name="fact">whether what it stands for is so now</param>
/// <param name="changed">called where the contact may have turned</param>
internal sealed class ContactInstrument(string tag, bool normallyClosed, Func<bool> fact, Action changed)
{
    private bool _isSo = fact();
    private bool _stuckMade;
    private bool _wireBroken;

    public string Tag { get; } = tag;

    /// <summary>Whether current flows.</summary>
    public bool IsMade => !_wireBroken && (_stuckMade || _isSo != normallyClosed);

    /// <summary>Welded or jammed: it stays made whatever happens. A normally closed one then never warns.</summary>
    public void StickMade(bool stuck)
    {
        _stuckMade = stuck;
        changed();
    }

    public void BreakWire(bool broken)
    {
        _wireBroken = broken;
        changed();
    }

    /// <summary>To be called where its fact may have changed.</summary>
    public void Look()
    {
        bool before = _isSo;
        _isSo = fact();
        if (_isSo != before)
        {
            changed();
        }
    }
}
