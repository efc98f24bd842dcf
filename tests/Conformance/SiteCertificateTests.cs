using System.Diagnostics;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Certificates;
using Sequencer.Testing;
using Xunit.Abstractions;

namespace Sequencer.Conformance.Tests;

/// <summary>
/// Every requirement of the sites: its certificate is discharged by a solver that is not ours, a sixth of them (in the long tier
/// all) by a second one too, and it is about this program and no weaker one.
/// </summary>
public sealed class SiteCertificateTests(ITestOutputHelper report)
{
    private static readonly string[] Discharged = ["unsat", "unsat", "unsat"];

    /// <summary>z3 takes seconds for some certificates: it gets every sixth of a site's, and all in the long tier.</summary>
    private static readonly int Share = SiteCertificates.AreAll ? 1 : 6;

    public static TheoryData<string> Sites => [.. SiteCertificates.SiteNames];

    public static TheoryData<string, string> SitesAndSolvers
    {
        get
        {
            TheoryData<string, string> data = [];
            foreach (string site in SiteCertificates.SiteNames)
            {
                data.Add(site, "z3");
                data.Add(site, "cvc5");
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Sites))]
    public void Each_requirement_has_a_certificate(string site)
    {
        SiteCertificates certificates = SiteCertificates.Of(site);
        Assert.NotEmpty(certificates.Texts);
        Assert.Equal(certificates.Requirements.Select(requirement => requirement.Name).Order(StringComparer.Ordinal), certificates.Texts.Keys);
    }

    [Theory]
    [MemberData(nameof(SitesAndSolvers))]
    public void All_three_obligations_of_each_certificate_are_unsat(string site, string solver)
    {
        SmtSolver outside = solver == "z3" ? SmtSolver.Z3 : SmtSolver.Cvc5;
        Stopwatch all = Stopwatch.StartNew();
        int share = solver == "z3" ? Share : 1;
        foreach ((string requirement, string text) in SiteCertificates.Of(site).Texts.Where((_, place) => place % share == 0))
        {
            Stopwatch watch = Stopwatch.StartNew();
            IReadOnlyList<string> answers = outside.Answers(text);
            report.WriteLine(FormattableString.Invariant($"{site} {requirement,-4} {solver,-5} {watch.Elapsed.TotalSeconds:0.00} s"));
            Assert.True(Discharged.SequenceEqual(answers), $"{requirement}: {string.Join(", ", answers)}");
        }

        report.WriteLine(FormattableString.Invariant($"{site} all  {solver,-5} {all.Elapsed.TotalSeconds:0.00} s"));
    }

    /// <summary>The checker also evaluates the text beside the interpreter, scan by scan, from random states.</summary>
    [Theory]
    [MemberData(nameof(Sites))]
    public void Each_certificate_is_about_the_system_that_the_source_gives(string site)
    {
        SiteCertificates certificates = SiteCertificates.Of(site);
        Assert.All(certificates.Requirements, requirement =>
        {
            CertificateFinding finding = CertificateChecker.Check(certificates.System, requirement, certificates.Texts[requirement.Name]);
            Assert.True(finding.IsAccepted, finding.Reason);
        });
    }

    [Theory]
    [MemberData(nameof(Sites))]
    public void A_certificate_of_another_requirement_or_with_a_weaker_claim_is_refused(string site)
    {
        SiteCertificates certificates = SiteCertificates.Of(site);
        const string Claim = "(define-fun |#required| () Bool ";
        Requirement first = certificates.Requirements.First(requirement => certificates.Texts[requirement.Name].Contains(Claim, StringComparison.Ordinal));
        Requirement second = certificates.Requirements.First(requirement => requirement != first);
        Assert.False(CertificateChecker.Check(certificates.System, first, certificates.Texts[second.Name]).IsAccepted);
        string text = certificates.Texts[first.Name];
        Assert.False(CertificateChecker.Check(certificates.System, first, text.Replace(Claim, Claim + "(or true ", StringComparison.Ordinal)).IsAccepted);
    }
}
