using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Web.Hosting;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.Identity;

namespace EstateWater.Web.Access;

/// <summary>Puts signing in together.</summary>
internal static class SignInSetup
{
    /// <summary>After so many wrong passwords …</summary>
    public const int FailuresToLockOut = 10;

    /// <summary>… the password of that name is refused for so long.</summary>
    public static readonly TimeSpan LockedOutFor = TimeSpan.FromMinutes(15);

    public static void AddSignIn(this IServiceCollection services, ServeOptions options)
    {
        services.AddSingleton(new SessionClock(options.SessionTime));
        services.AddSingleton<FirstStart>();
        services.AddSingleton<Sessions>();
        services.AddSingleton<Landing>();
        services.AddScoped<Door>();
        services.AddScoped<Newcomers>();
        services.AddScoped<OneTimeLinks>();
        services.AddScoped<PeopleDesk>();
        services.AddScoped<OwnAccount>();
        services.AddScoped<OwnPreferences>();
        services.AddAuthorization(Policies.AddTo);
        services.AddCascadingAuthenticationState();
        services.AddRateLimiter(TryLimit.Configure);
        services.AddAntiforgery(forms => forms.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest);
        AddPeople(services);

        var authentication = services.AddAuthentication(options.Demo ? DemoVisitor.SchemeName : IdentityConstants.ApplicationScheme);
        authentication.AddIdentityCookies();
        services.Configure<CookieAuthenticationOptions>(IdentityConstants.ApplicationScheme, SessionCookie.Configure);
        services.ConfigureAll<CookieAuthenticationOptions>(cookie =>
        {
            // The estate's clock may stand still; a browser's does not.
            cookie.TimeProvider = options.SessionTime;
            cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        if (options.Demo)
        {
            authentication.AddScheme<AuthenticationSchemeOptions, DemoVisitor>(DemoVisitor.SchemeName, null);
            return;
        }

        services.AddScoped<AuthenticationStateProvider, CircuitSession>();
        services.AddScoped<CircuitHandler, CommandCheck>();
    }

    private static void AddPeople(IServiceCollection services)
    {
        services.AddIdentityCore<Person>(identity =>
            {
                identity.Password.RequiredLength = PasswordRules.ShortestLength;
                identity.Password.RequireDigit = identity.Password.RequireLowercase = identity.Password.RequireUppercase = identity.Password.RequireNonAlphanumeric = false;
                identity.Lockout.MaxFailedAccessAttempts = FailuresToLockOut;
                identity.Lockout.DefaultLockoutTimeSpan = LockedOutFor;

                // Names are people's names, in any script; PersonName says what is none.
                identity.User.AllowedUserNameCharacters = "";
            })
            .AddEntityFrameworkStores<EstateDb>()
            .AddSignInManager()
            .AddClaimsPrincipalFactory<PersonPrincipal.Factory>()
            .AddPasswordValidator<PasswordRules>();
        services.Configure<IdentityPasskeyOptions>(passkeys =>
        {
            // A passkey signs in by itself, so the phone must have asked for a finger, a face or its own code.
            passkeys.UserVerificationRequirement = "required";
            passkeys.ResidentKeyRequirement = "required";
        });
    }
}
