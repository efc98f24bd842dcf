namespace Sequencer.Plant.Ledger;

/// <summary>
/// Where a substance stayed, in mol or g: what was there, what came from outside, what went there (a knife's cake is outside), what is there;
/// and what other substances have turned into it (below nought: what it has turned into them), which is what the four leave open.
/// </summary>
public sealed record SubstanceLedger(string Name, string Unit, double Before, double Came, double Went, double Now)
{
    public double Turned => Now + Went - Before - Came;
}
