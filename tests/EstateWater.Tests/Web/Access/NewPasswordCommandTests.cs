using System.Net;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Tests.Data;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Access;
using EstateWater.Web.Commands;
using EstateWater.Web.Hosting;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Access;

/// <summary>A way in again by the console of the computer that holds the database, while the program serves.</summary>
public sealed class NewPasswordCommandTests : IAsyncLifetime
{
    private const string Other = "other words of mine";

    private readonly FakeTimeProvider time = new(DateTimeOffset.UtcNow);
    private readonly TemporaryFolder folder = new();
    private RunningHost host = null!;
    private Visitor again = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private string Database => host.App.Services.GetRequiredService<ServeOptions>().Database;

    public async ValueTask InitializeAsync()
    {
        host = await RunningHost.StartEmptyAsync(null, time);
        await host.Manager.StartAsync(host.App.Services.GetRequiredService<FirstStart>().Begin(), "Mara Ruiz", Visitor.Password);
        again = new Visitor(host.Address);
    }

    public async ValueTask DisposeAsync()
    {
        again.Dispose();
        await host.DisposeAsync();
        folder.Dispose();
    }

    [Fact]
    public async Task The_only_manager_comes_in_again_and_what_was_open_ends()
    {
        Assert.Equal("/week", await again.JoinAsync(await LinkAsync(" mara  RUIZ "), Other));
        Assert.Equal(HttpStatusCode.OK, (await again.Stays.GetAsync("/people", Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await host.Manager.Stays.GetAsync("/people", Cancellation)).StatusCode);
        using var third = new Visitor(host.Address);
        Assert.Null(await third.SignInAsync("Mara Ruiz"));
        Assert.Equal("/week", await third.SignInAsync("Mara Ruiz", Other));
    }

    [Fact]
    public async Task A_link_works_once_and_only_the_newest()
    {
        var first = await LinkAsync("Mara Ruiz");
        var second = await LinkAsync("Mara Ruiz");
        Assert.Equal(HttpStatusCode.Gone, (await again.Stays.GetAsync(first, Cancellation)).StatusCode);
        Assert.Equal("/week", await again.JoinAsync(second, Other));
        Assert.Equal(HttpStatusCode.Gone, (await again.Stays.GetAsync(second, Cancellation)).StatusCode);
    }

    [Fact]
    public async Task A_form_that_was_open_when_the_link_was_used_sets_no_password()
    {
        var link = await LinkAsync("Mara Ruiz");
        using var other = new Visitor(host.Address);
        var answers = await Task.WhenAll(again.SendAsync(link, "join", ("password", Other)), other.SendAsync(link, "join", ("password", Other)));
        Assert.Single(answers, a => Visitor.Where(a) == "/week");
    }

    [Theory]
    [InlineData(59, HttpStatusCode.OK)]
    [InlineData(61, HttpStatusCode.Gone)]
    public async Task A_link_is_good_for_an_hour(int minutes, HttpStatusCode status)
    {
        var link = await LinkAsync("Mara Ruiz");
        time.Advance(TimeSpan.FromMinutes(minutes));
        using var answer = await again.Stays.GetAsync(link, Cancellation);
        Assert.Equal(status, answer.StatusCode);
    }

    [Fact]
    public async Task Making_and_using_are_recorded_and_the_secret_is_kept_as_its_hash_alone()
    {
        var link = await LinkAsync("Mara Ruiz");
        var secret = link["/join/".Length..];
        await again.JoinAsync(link, Other);
        await using var db = DatabaseSetup.Open(Database);
        Assert.Equal(OneTimeSecret.Hash(secret), (await db.Invitations.SingleAsync(Cancellation)).SecretHash);
        var changes = await db.Changes.OrderByDescending(c => c.Id).Take(2).ToListAsync(Cancellation);
        Assert.Equal(
            [("Mara Ruiz", "Mara Ruiz set a new password by link"), ("Command line", "Gave Mara Ruiz a link for a new password")],
            changes.Select(c => (c.By, c.What)));
        Assert.All(changes, c => Assert.Equal(ChangeKind.Person, c.Kind));
    }

    [Fact]
    public async Task Too_many_wrong_passwords_do_not_keep_out_who_has_the_link()
    {
        using var guesser = new Visitor(host.Address);
        for (var tries = 0; tries < SignInSetup.FailuresToLockOut; tries++)
        {
            Assert.Null(await guesser.SignInAsync("Mara Ruiz", "wrong words of mine"));
        }

        await again.JoinAsync(await LinkAsync("Mara Ruiz"), Other);
        using var third = new Visitor(host.Address);
        Assert.Equal("/week", await third.SignInAsync("Mara Ruiz", Other));
    }

    [Fact]
    public async Task Someone_locked_out_is_let_in_by_a_link_made_afterwards_and_by_none_made_before()
    {
        using var ben = new Visitor(host.Address);
        await ben.JoinAsync(await host.Manager.InviteAsync("Ben", "manager"));
        var before = await LinkAsync("Ben");
        await LockAsync("Ben", TimeSpan.Zero);
        await again.JoinAsync(before, Other);
        Assert.Null(await again.SignInAsync("Ben", Other));

        await LockAsync("Ben", TimeSpan.FromMinutes(-1));
        Assert.Equal("/week", await again.JoinAsync(await LinkAsync("Ben"), Other));
        Assert.Equal(HttpStatusCode.OK, (await again.Stays.GetAsync("/week", Cancellation)).StatusCode);
        await using var db = DatabaseSetup.Open(Database);
        Assert.Equal("Ben set a new password by link and is let in again", (await db.Changes.OrderBy(c => c.Id).LastAsync(Cancellation)).What);
    }

    [Fact]
    public async Task A_link_is_made_for_the_address_that_people_open_also_while_nothing_serves()
    {
        await using (var db = DatabaseSetup.Open(folder.File("estate.db")))
        {
            await DatabaseSetup.MigrateAsync(db, Cancellation);
            db.People.Add(new Person { UserName = "Zoë", NormalizedUserName = "ZOË", Role = PersonRole.Manager, JoinedAt = time.GetUtcNow(), SecurityStamp = "s" });
            await db.SaveChangesAsync(Cancellation);
        }

        var (code, output, _) = await RunAsync("--for", "zoë", "--database", folder.File("estate.db"), "--address", "https://water.example");
        Assert.Equal(0, code);
        Assert.StartsWith("Zoë sets a new password at https://water.example/join/", output, StringComparison.Ordinal);
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
    }

    [Fact]
    public async Task Who_is_not_there_is_told_who_is()
    {
        using var ben = new Visitor(host.Address);
        await ben.JoinAsync(await host.Manager.InviteAsync("Ben", "irrigator"));
        Assert.Equal((2, "", "--for: there is no 'Marta'; there is Ben (irrigator), Mara Ruiz (manager).\n"), await RunAsync("--for", "Marta", "--database", Database));
    }

    [Fact]
    public async Task A_missing_database_one_without_people_and_a_file_that_is_none_are_refused_and_left_as_they_are()
    {
        var missing = folder.File("missing.db");
        Assert.Equal((2, "", $"{missing}: there is no such database; name it with --database.\n"), await RunAsync("--for", "Mara", "--database", missing));
        Assert.False(File.Exists(missing));

        await using (var empty = DatabaseSetup.Open(folder.File("empty.db")))
        {
            await DatabaseSetup.MigrateAsync(empty, Cancellation);
        }

        Assert.Contains("nobody is there yet", (await RunAsync("--for", "Mara", "--database", folder.File("empty.db"))).Error, StringComparison.Ordinal);

        var text = folder.File("notes.txt");
        await File.WriteAllTextAsync(text, "These are notes and no database at all, however long one looks at them.", Cancellation);
        var (code, _, error) = await RunAsync("--for", "Mara", "--database", text);
        Assert.Equal(2, code);
        Assert.Contains("cannot be used as the database", error, StringComparison.Ordinal);
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
    }

    [Theory]
    [InlineData("localhost:5080")]
    [InlineData("water")]
    [InlineData("ftp://water.example")]
    public void An_address_that_no_page_has_is_refused(string address) =>
        Assert.Contains($"'{address}'", Assert.Single(NewPasswordCommand.Create().Parse(["--for", "Mara", "--address", address]).Errors).Message, StringComparison.Ordinal);

    private async Task<string> LinkAsync(string name)
    {
        var (code, output, error) = await RunAsync("--for", name, "--database", Database);
        Assert.Equal((0, ""), (code, error));
        return new Uri(output.Split(' ').Single(word => word.StartsWith(ServeOptions.DefaultUrls, StringComparison.Ordinal))).AbsolutePath;
    }

    private async Task LockAsync(string name, TimeSpan when)
    {
        await using var db = DatabaseSetup.Open(Database);
        await db.People.Where(p => p.UserName == name).ExecuteUpdateAsync(p => p.SetProperty(x => x.LockedAt, TimeProvider.System.GetUtcNow() + when), Cancellation);
    }

    private static async Task<(int Code, string Output, string Error)> RunAsync(params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = await NewPasswordCommand.Create().Parse(arguments).InvokeAsync(new() { Output = output, Error = error }, Cancellation);
        return (code, output.ToString(), error.ToString());
    }
}
