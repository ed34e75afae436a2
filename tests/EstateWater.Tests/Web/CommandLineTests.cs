using EstateWater.Web;
using EstateWater.Web.Hosting;

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

    [Theory]
    [InlineData(null, true)]
    [InlineData("http://localhost:5090;http://[::1]:5090", true)]
    [InlineData("http://127.0.0.1:0", true)]
    [InlineData("http://0.0.0.0:5080", false)]
    [InlineData("http://127.0.0.1:5080;http://*:5080", false)]
    public void Knows_which_addresses_only_this_computer_reaches(string? urls, bool local) =>
        Assert.Equal(local, new ServeOptions { Urls = urls }.IsLocal);

    [Fact]
    public async Task The_demo_is_not_served_to_other_computers() =>
        Assert.Equal(2, await CommandLine.Run(["serve", "--demo", "--urls", "http://0.0.0.0:5080"]));

    [Fact]
    public async Task An_instant_that_is_none_is_refused() =>
        Assert.NotEqual(0, await CommandLine.Run(["serve", "--as-of", "yesterday"]));
}
