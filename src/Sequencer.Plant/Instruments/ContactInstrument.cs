namespace Sequencer.Plant.Instruments;

/// <summary>A contact to the controller: the fact it stands for, its polarity, and what has failed in it.</summary>
internal sealed class ContactInstrument(string tag, bool normallyClosed, Func<bool> fact)
{
    private bool _isSo = fact();
    private bool _stuckMade;
    private bool _wireBroken;

    public string Tag { get; } = tag;

    /// <summary>Whether current flows.</summary>
    public bool IsMade => !_wireBroken && (_stuckMade || _isSo != normallyClosed);

    /// <summary>Welded or jammed: it stays made whatever happens. A normally closed one then never warns.</summary>
    public void StickMade(bool stuck) => _stuckMade = stuck;

    public void BreakWire(bool broken) => _wireBroken = broken;

    /// <summary>To be called where its fact may have changed.</summary>
    public void Look() => _isSo = fact();
}
