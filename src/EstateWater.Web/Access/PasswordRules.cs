using EstateWater.Data.Model;
using Microsoft.AspNetCore.Identity;

namespace EstateWater.Web.Access;

/// <summary>A password is long and not one that everybody thinks of; of what signs it is made is nobody's business.</summary>
/// <remarks>The list is short and from memory: it holds what is tried first, in the form that remains when figures and signs at the end are taken away.</remarks>
public sealed class PasswordRules : IPasswordValidator<Person>
{
    /// <summary>Fewest letters.</summary>
    public const int ShortestLength = 10;

    /// <summary>Most letters: hashing more costs time and gains nothing.</summary>
    public const int LongestLength = 200;

    /// <summary>The code of the mistake: too long.</summary>
    public const string TooLong = "PasswordTooLong";

    /// <summary>The code of the mistake: common.</summary>
    public const string TooCommon = "PasswordTooCommon";

    private static readonly Lazy<HashSet<string>> Common = new(Read);

    /// <inheritdoc/>
    public Task<IdentityResult> ValidateAsync(UserManager<Person> manager, Person user, string? password)
    {
        ArgumentNullException.ThrowIfNull(user);
        var mistake = password switch
        {
            { Length: > LongestLength } => TooLong,
            { } typed when IsCommon(typed) || Core(typed) == Core(user.UserName ?? "") => TooCommon,
            _ => null,
        };
        return Task.FromResult(mistake is null ? IdentityResult.Success : IdentityResult.Failed(new IdentityError { Code = mistake, Description = mistake }));
    }

    /// <summary>Whether it is one that is tried first: of the list, or one sign over and over.</summary>
    public static bool IsCommon(string password)
    {
        ArgumentNullException.ThrowIfNull(password);
        return password.Distinct().Count() < 3 || Common.Value.Contains(password.ToLowerInvariant()) || Common.Value.Contains(Core(password));
    }

    private static string Core(string password) => string.Concat(password.ToLowerInvariant().Where(c => !char.IsWhiteSpace(c))).TrimEnd("0123456789!?.,*#$@%&-_+".ToCharArray());

    private static HashSet<string> Read()
    {
        using var stream = typeof(PasswordRules).Assembly.GetManifestResourceStream("common-passwords.txt")!;
        using var reader = new StreamReader(stream);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
    }
}
