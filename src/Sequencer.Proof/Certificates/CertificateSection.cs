namespace Sequencer.Proof.Certificates;

/// <summary>A part of a certificate, what it holds in words, and its lines.</summary>
internal sealed record CertificateSection(string Holds, string Text);
