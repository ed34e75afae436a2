using EstateWater.Web;
using EstateWater.Web.Commands;
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

    [Theory]
    [InlineData("http://127.0.0.1:5080", "http://localhost:5080")]
    [InlineData("http://192.0.2.7:5080", "http://192.0.2.7:5080")]
    public void On_this_computer_it_is_opened_by_name_so_that_passkeys_can_be_kept(string listensOn, string open) =>
        Assert.Equal(open, ServeOptions.ToOpen(listensOn));

    [Fact]
    public async Task The_demo_is_not_served_to_other_computers() =>
        Assert.Equal(2, await CommandLine.Run(["serve", "--demo", "--urls", "http://0.0.0.0:5080"]));

    [Theory]
    [InlineData("--proxy", "127.0.0.1")]
    [InlineData("--urls", "http://127.0.0.1:0", "--proxy", "::1")]
    public async Task The_demo_is_not_served_through_a_proxy(params string[] arguments) =>
        Assert.Equal(2, await CommandLine.Run(["serve", "--demo", .. arguments]));

    [Fact]
    public void Each_proxy_is_an_address()
    {
        var errors = ServeCommand.Create().Parse(["--proxy", "127.0.0.1", "--proxy", "gate"]).Errors;
        Assert.Equal("--proxy: 'gate' is no address; write it like 127.0.0.1 or ::1", Assert.Single(errors).Message);
    }

    // ISO 8601-1:2019 calls a time of day without a designator local time: which moment it is, it does not say.
    [Theory]
    [InlineData("yesterday")]
    [InlineData("2026-01-20")]
    [InlineData("2026-01-20T06:00:00")]
    public async Task An_instant_without_an_offset_is_refused_alike_by_all_who_take_one(string text)
    {
        var words = $"--as-of: '{text}' is no instant with an offset; write it like 2026-07-14T06:00:00+02:00";
        Assert.Equal(words, Assert.Single(ServeCommand.Create().Parse(["--as-of", text]).Errors).Message);
        using var error = new StringWriter();
        Assert.Equal(2, await PlanCommand.Create().Parse(["--data", Path.Combine(Repository.Root, "seed"), "--as-of", text]).InvokeAsync(new() { Error = error }, TestContext.Current.CancellationToken));
        Assert.Equal(words, error.ToString().TrimEnd());
    }

    [Theory]
    [InlineData("2026-01-20T06:00:00+10:30", 2026, 1, 19, 19, 30)]
    [InlineData("2026-01-20T06:00:00Z", 2026, 1, 20, 6, 0)]
    public void An_instant_with_an_offset_is_that_moment(string text, int year, int month, int day, int hour, int minute)
    {
        Assert.True(Instants.TryRead(text, out var instant));
        Assert.Equal(new DateTimeOffset(year, month, day, hour, minute, 0, TimeSpan.Zero), instant);
    }
}
