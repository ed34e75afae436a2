using System.CommandLine;
using EstateWater.Data.Store;
using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Commands;

/// <summary><c>new-password --for NAME</c>: a way in again where no manager can sign in to make a link. Whoever may write the database may run it.</summary>
public static class NewPasswordCommand
{
    private static readonly UpperInvariantLookupNormalizer Normalizer = new();

    public static Command Create()
    {
        var name = new Option<string>("--for") { Description = "The name with which the person signs in.", HelpName = "NAME", Required = true };
        var address = new Option<string>("--address") { Description = "The address at which the program is opened.", HelpName = "URL", DefaultValueFactory = _ => ServeOptions.DefaultUrls };
        address.Validators.Add(given =>
        {
            var text = given.GetValueOrDefault<string>();
            if (!Uri.TryCreate(text, UriKind.Absolute, out var url) || (url.Scheme != Uri.UriSchemeHttp && url.Scheme != Uri.UriSchemeHttps))
            {
                given.AddError($"--address: '{text}' is no address of a page; write it like {ServeOptions.DefaultUrls}");
            }
        });
        var database = DatabaseOption.Create();
        var command = new Command("new-password", "Makes a link by which a person sets a new password, also while the program runs.") { name, address, database };
        command.SetAction((parsed, cancellation) => RunAsync(
            parsed.GetRequiredValue(name),
            new Uri(parsed.GetRequiredValue(address)),
            parsed.GetRequiredValue(database),
            parsed.InvocationConfiguration.Output,
            parsed.InvocationConfiguration.Error,
            cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string name, Uri address, string database, TextWriter output, TextWriter error, CancellationToken cancellation)
    {
        if (!File.Exists(database))
        {
            await error.WriteLineAsync($"{database}: there is no such database; name it with --database.");
            return ExitCodes.BadInput;
        }

        try
        {
            await using var db = DatabaseSetup.Open(database);
            await DatabaseSetup.MigrateAsync(db, cancellation);
            var normalized = Normalizer.NormalizeName(PersonName.Clean(name));
            if (await db.People.AsNoTracking().SingleOrDefaultAsync(p => p.NormalizedUserName == normalized, cancellation) is not { } person)
            {
                await error.WriteLineAsync($"--for: there is no '{name}'; {await WhoIsHereAsync(db, cancellation)}");
                return ExitCodes.BadInput;
            }

            var links = new OneTimeLinks(db, new SessionClock(TimeProvider.System), TimeProvider.System);
            var secret = await links.NewPasswordAsync(person, "Command line", OneTimeLinks.AtConsoleGoodFor, cancellation);
            await output.WriteLineAsync($"{person.UserName} sets a new password at {new Uri(address, $"{SignInPaths.Join}/{secret}")} (works once, for {OneTimeLinks.AtConsoleGoodFor.TotalHours:0} hour).");
            return ExitCodes.Done;
        }
        catch (SqliteException failure)
        {
            await error.WriteLineAsync($"{database}: cannot be used as the database: {failure.Message}");
            return ExitCodes.BadInput;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or InvalidOperationException or TimeoutException)
        {
            await error.WriteLineAsync(failure.Message);
            return ExitCodes.BadInput;
        }
    }

    private static async Task<string> WhoIsHereAsync(EstateDb db, CancellationToken cancellation)
    {
        var people = await db.People.AsNoTracking().OrderBy(p => p.NormalizedUserName).Select(p => new { p.UserName, p.Role }).ToListAsync(cancellation);
        return people.Count == 0
            ? "nobody is there yet: the start of the program prints the code for the first manager."
            : $"there is {string.Join(", ", people.Select(p => $"{p.UserName} ({RoleWords.Of(p.Role)})"))}.";
    }
}
