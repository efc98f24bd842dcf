using Sequencer.Sites;
using Sequencer.Testing;

namespace Sequencer.Conformance.Tests;

/// <summary>
/// The exported text of each demo site is proved equal to its programs; in the long tier the certificates are discharged by
/// two solvers that are not ours, which takes one of them up to a minute for a whole site.
/// </summary>
public sealed class ExportCertificateTests
{
    [Theory]
    [InlineData("fernhollow")]
    [InlineData("quillgate")]
    [InlineData("sedgemere")]
    [InlineData("marlpit-wharf")]
    public void The_exported_text_is_proved_equal(string site)
    {
        DirectoryInfo results = Directory.CreateTempSubdirectory("sequencer-test-");
        try
        {
            SiteResult export = SiteCommands.Export(RepositoryPath.Site(site), results.FullName, ExportSettings.Default, CancellationToken.None);
            Assert.True(export.Outcome == Outcome.Holds, export.Text);
            string certificate = File.ReadAllText(Path.Combine(results.FullName, "certificates", "export-all-units.smt2"));
            Assert.All(SiteCertificates.AreAll ? [SmtSolver.Z3, SmtSolver.Cvc5] : Array.Empty<SmtSolver>(), solver => solver.Discharge(certificate));
        }
        finally
        {
            results.Delete(recursive: true);
        }
    }
}
