using EstateWater.Data.Model;
using EstateWater.Web.Access;
using EstateWater.Web.Parts.Field;
using Microsoft.AspNetCore.Identity;

namespace EstateWater.Web.Features.SignIn;

/// <summary>The words of the pages about signing in.</summary>
/// <param name="language">The reader's language.</param>
public sealed class SignInWords(FieldLanguage language) : FieldWords(language)
{
    public string SignIn => Say("Sign in", "Entrar");

    public string Name => Say("Your name", "Su nombre");

    public string Password => Say("Password", "Contraseña");

    public string Stay => Say("Stay signed in on this phone or computer", "Seguir dentro en este teléfono o computadora");

    public string WithPasskey => Say("Sign in with a passkey", "Entrar con llave de acceso");

    public string OrPassword => Say("or with your name and password", "o con su nombre y contraseña");

    public string Wrong => Say(
        "That did not work. Check name and password; after many tries wait 15 minutes. If it still fails, ask the manager for a new link.",
        "No se pudo entrar. Revise el nombre y la contraseña; después de muchos intentos espere 15 minutos. Si sigue igual, pida al encargado un enlace nuevo.");

    public string PasskeyWrong => Say(
        "This passkey was not accepted. Try again, or use your name and password.",
        "No se aceptó esta llave. Pruebe otra vez, o use su nombre y contraseña.");

    public string NobodyYet => Say(
        "Nobody can sign in yet. The program showed a code when it was started:",
        "Todavía nadie puede entrar. El programa mostró un código al arrancar:");

    public string SetUp => Say("Set up the first manager", "Crear el primer encargado");

    public string Forgot => Say(
        "Password forgotten? The manager gives you a link to set a new one; for the only manager, whoever runs the program can make it.",
        "¿Olvidó la contraseña? El encargado le da un enlace para poner otra; al único encargado se lo puede dar quien maneja el programa.");

    public string StartTitle => Say("The first manager", "El primer encargado");

    public string StartLead => Say(
        "Whoever started the program has the code. It works once, for one hour; starting the program again gives a new one.",
        "Quien arrancó el programa tiene el código. Sirve una sola vez, por una hora; al arrancar de nuevo sale otro.");

    public string Code => Say("Code from the console", "Código de la consola");

    public string MakeManager => Say("Make me the manager", "Hacerme encargado");

    public string PasswordRule => Say(
        $"At least {PasswordRules.ShortestLength} letters, of any kind: four plain words are good, like “gate rain seven boots”.",
        $"Al menos {PasswordRules.ShortestLength} letras, las que quiera: cuatro palabras sueltas sirven, como «puerta lluvia siete botas».");

    public string NewPassword => Say("New password", "Contraseña nueva");

    public string SetPassword => Say("Save and go on", "Guardar y seguir");

    public string LinkGone => Say("This link does not work any more", "Este enlace ya no sirve");

    public string LinkGoneWhy => Say(
        "It was used, taken back, or has run out: a link is good for a week, one made at the console for an hour. Ask for a new one.",
        "Ya se usó, lo retiraron o venció: un enlace sirve una semana, el hecho en la consola una hora. Pida otro.");

    public string Account => Say("Your account", "Su cuenta");

    public string SignOut => Say("Sign out", "Salir");

    public string SignOutEverywhere => Say("Sign out on every phone and computer", "Salir en todos los teléfonos y computadoras");

    public string Passkeys => Say("Passkeys", "Llaves de acceso");

    public string PasskeysLead => Say(
        "With a passkey this phone signs you in by your finger, your face or its own code; there is no password to type.",
        "Con una llave de acceso este teléfono le deja entrar con el dedo, la cara o su propio código; no hay que escribir contraseña.");

    public string PasskeyName => Say("What to call it, like “my phone”", "Cómo llamarla, como «mi teléfono»");

    public string MakePasskey => Say("Make a passkey here", "Crear una llave aquí");

    public string PasskeyNeedsHttps => Say(
        "This browser offers no passkeys at this address; they need https and a name in place of a number. On the computer that runs the program, open it as localhost.",
        "Este navegador no ofrece llaves de acceso en esta dirección; hace falta https y un nombre en vez de un número. En la computadora donde corre el programa, ábralo como localhost.");

    public string Unnamed => Say("Passkey", "Llave");

    public string ChangePassword => Say("Change the password", "Cambiar la contraseña");

    public string CurrentPassword => Say("Present password", "Contraseña actual");

    public string PasswordChanged => Say("The password is changed. Other phones and computers were signed out.", "Contraseña cambiada. Se cerró en los demás teléfonos y computadoras.");

    public string PasskeyKept => Say("The passkey is kept.", "Llave guardada.");

    public string Remove(string passkey) => Say($"Remove “{passkey}”", $"Quitar «{passkey}»");

    public string MadeOn(DateTimeOffset at) => Say($"made {Day(DateOnly.FromDateTime(at.DateTime))}", $"creada {Day(DateOnly.FromDateTime(at.DateTime))}");

    public string Welcome(string name) => Say($"Welcome, {name}", $"Bienvenido, {name}");

    public string NewPasswordFor(string name) => Say($"A new password for {name}", $"Contraseña nueva de {name}");

    public string JoinLead(string by, PersonRole role, string name) => Say(
        $"{by} invites you as {Role(role)}. You will sign in as “{name}”.",
        $"{by} le invita como {Role(role)}. Va a entrar como «{name}».");

    public string SignedInWith(string name, PersonRole role) => Say($"Signed in as {name}, {Role(role)}.", $"Entró como {name}, {Role(role)}.");

    /// <summary>A link to the page on which someone begins.</summary>
    public string BackTo(string landing) => landing switch
    {
        "/owner" => Say("To the owner’s page", "A la página del dueño"),
        "/week" => Say("Back to the week", "Volver a la semana"),
        "/sets" => Say("Back to the sets", "Volver a los riegos"),
        "/readings" => Say("Back to the readings", "Volver a las lecturas"),
        _ => Say("Back to the estate", "Volver a la finca"),
    };

    public string Role(PersonRole role) => role switch
    {
        PersonRole.Owner => Say("owner", "dueño"),
        PersonRole.Manager => Say("manager", "encargado"),
        PersonRole.Irrigator => Say("irrigator", "regador"),
        PersonRole.Technician => Say("technician", "técnico"),
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "A role of the list."),
    };

    /// <summary>What is wrong, in words that say the rule.</summary>
    public string Mistake(IdentityResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Errors.Select(e => e.Code).FirstOrDefault() switch
        {
            nameof(IdentityErrorDescriber.PasswordTooShort) => PasswordRule,
            PasswordRules.TooLong => Say($"At most {PasswordRules.LongestLength} letters.", $"Como mucho {PasswordRules.LongestLength} letras."),
            PasswordRules.TooCommon => Say(
                "Many people have this password, so it is tried first. Take another, like four plain words.",
                "Mucha gente usa esta contraseña y es lo primero que prueban. Ponga otra, como cuatro palabras sueltas."),
            nameof(IdentityErrorDescriber.InvalidUserName) => Say($"A name has 1 to {Person.LongestName} letters, like “Ana Ruiz”.", $"El nombre lleva de 1 a {Person.LongestName} letras, como «Ana Ruiz»."),
            nameof(IdentityErrorDescriber.DuplicateUserName) => Say("Someone has this name already. Ask the manager for a link with another.", "Ya hay alguien con ese nombre. Pida al encargado un enlace con otro."),
            nameof(IdentityErrorDescriber.PasswordMismatch) => Say("The present password is not right.", "La contraseña actual no es correcta."),
            Newcomers.SecretRefused => Say("This is not the code, or it was used or is older than an hour. Start the program again for a new one.", "No es el código, o ya se usó o tiene más de una hora. Arranque el programa de nuevo para tener otro."),
            OwnAccount.PasskeyRefused => PasskeyWrong,
            var other => throw new ArgumentOutOfRangeException(nameof(result), other, "A mistake with words."),
        };
    }
}
