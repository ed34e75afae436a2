using EstateWater.Web;

namespace EstateWater.Tests.Web;

public sealed class CommandLineTests
{
    [Theory]
    [InlineData("", "serve")]
    [InlineData("--demo", "serve --demo")]
    [InlineData("plan --data folder", "plan --data folder")]
    [InlineData("--help", "--help")]
    public void Serving_is_what_the_program_does_when_no_command_is_named(string typed, string run) =>
        Assert.Equal(run.Split(' '), CommandLine.WithDefaultCommand(typed.Split(' ', StringSplitOptions.RemoveEmptyEntries)));

    [Fact]
    public async Task An_instant_that_is_none_is_refused() =>
        Assert.NotEqual(0, await CommandLine.Run(["serve", "--as-of", "yesterday"]));
}
