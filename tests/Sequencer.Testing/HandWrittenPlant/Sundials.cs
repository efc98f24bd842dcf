using Xunit;

namespace Sequencer.Testing.HandWrittenPlant;

/// <summary>The solvers of differential equations of SUNDIALS, as Debian has them.</summary>
public static class Sundials
{
    /// <summary>What the linker is told; fails with the command that installs them where they are missing.</summary>
    public static string[] Libraries()
    {
        if (!File.Exists("/usr/include/cvode/cvode.h"))
        {
            Assert.Fail("SUNDIALS is not installed; install it with: apt-get install -y libsundials-dev");
        }

        return ["-lsundials_cvode", "-lsundials_nvecserial", "-lsundials_sunlinsoldense", "-lsundials_sunmatrixdense"];
    }
}
