namespace Sequencer.Export.Writing;

/// <summary>What the first lines of an export say: whose it is and what exactly was exported.</summary>
public sealed record ExportHeader(string Site, string Revision, string MeaningHash);
