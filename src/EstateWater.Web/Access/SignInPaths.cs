namespace EstateWater.Web.Access;

/// <summary>Where people come in.</summary>
public static class SignInPaths
{
    /// <summary>The page to sign in.</summary>
    public const string SignIn = "/sign-in";

    /// <summary>The page that makes the first manager.</summary>
    public const string Start = "/start";

    /// <summary>Where an invited person sets a password; the secret follows.</summary>
    public const string Join = "/join";

    /// <summary>The page of whoever signed in.</summary>
    public const string Account = "/account";

    /// <summary>The list of people.</summary>
    public const string People = "/people";

    /// <summary>Where the demo's visitor chooses a role.</summary>
    public const string Demo = "/demo";
}
