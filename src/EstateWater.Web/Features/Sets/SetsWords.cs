using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Sets;

/// <summary>The words of the irrigator's page.</summary>
/// <param name="language">The reader's language.</param>
/// <param name="units">The reader's units.</param>
public sealed class SetsWords(FieldLanguage language, UnitChoice units) : FieldWords(language, units)
{
    public string Title => Say("Sets to run", "Riegos por hacer");

    public string NoScript => Say(
        "The hours cannot be entered here because scripts are off. Write them down and tell the manager.",
        "Aquí no se pueden anotar las horas porque el navegador tiene los scripts apagados. Apúntelas en papel y avise al encargado.");

    public string NothingPublished => Say(
        "No sets have been published yet. When the manager publishes the week’s plan they are listed here, valve by valve.",
        "Todavía no hay riegos publicados. Cuando el encargado publique el plan de la semana, aquí salen válvula por válvula.");

    public string NotConfirmed => Say("Not confirmed yet", "Sin confirmar");

    /// <summary>Before all that is done less often than starting and stopping.</summary>
    public string Other => Say("Other", "Otro");

    public string OpenedAt => Say("Opened at", "Se abrió a las");

    public string HoursRun => Say("Hours run", "Horas de riego");

    public string MeterBefore => Say("Meter before", "Medidor antes") + Unit;

    public string MeterAfter => Say("Meter after", "Medidor después") + Unit;

    public string OrUsed => Say("or water used", "o agua gastada") + Unit;

    private string Unit => ", " + Units.Volume.Symbol;

    public string IfRead => Say("if read", "si se leyó");

    public string Note => Say("Note", "Nota");

    public string Photo => Say("Photo", "Foto");

    public string CouldNot => Say("Could not run it", "No se pudo regar");

    public string Why => Say("why", "por qué");

    public string InWords => Say("In words", "En palabras");

    public string PhotoLink => Say("See the photo", "Ver la foto");

    public string Source(string source) => Say($"on {source}", $"de {source}");

    public string Start(string valve) => Say($"Start {valve}", $"Empezar {valve}");

    public string Stop(string valve) => Say($"Stop {valve}", $"Parar {valve}");

    public string Save(string valve) => Say($"Save {valve}", $"Guardar {valve}");

    public string SaveHours(string valve) => Say($"Save the hours of {valve}", $"Guardar las horas de {valve}");

    public string SaveCouldNot(string valve) => Say($"Save: {valve} could not run", $"Guardar: {valve} no se regó");

    public string Correct(string valve) => Say($"Correct {valve}", $"Corregir {valve}");

    public string Again(string valve) => Say($"Enter {valve} again", $"Anotar {valve} otra vez");

    public string Later(int count) => Say($"Later nights ({count})", $"Otras noches ({count})");

    public string PublishedBy(string by, DateTimeOffset at) => Say(
        $"Published by {by}, {Moment(at)}.", $"Publicado por {by}, {Moment(at)}.");

    public string Confirmed(ConfirmedHours said) => $"{Say("Confirmed", "Confirmado")}: {Said(said)}";

    /// <summary>For example “Wed 22 Jan 20:00”.</summary>
    public string Moment(DateTimeOffset at) => $"{Day(DateOnly.FromDateTime(at.DateTime))} {Clock(at)}";

    /// <summary>For example “6 h, meter 171.5 m³ (Ben, Thu 23 Jan 07:00)”.</summary>
    public string Said(ConfirmedHours said)
    {
        var reason = said.NotRun is { } why ? $", {Reason(why)}" : "";
        var run = said.Hours == 0 ? Say("could not run", "no se pudo regar") + reason : Units.Hours(said.Hours);
        var meter = said.MeterM3 is { } m3 ? Say("meter", "medidor") + $" {Units.Meter(m3)}" : null;
        var note = string.IsNullOrWhiteSpace(said.Note) ? "" : $": {said.Note}";
        var corrected = said.IsCorrection ? Say(", corrected", ", corregido") : "";
        return $"{run}{(meter is null ? "" : ", " + meter)}{note} ({said.By}, {Moment(said.At)}{corrected})";
    }

    /// <summary>The reason as people say it.</summary>
    public string Reason(NotRunReason reason) => reason switch
    {
        NotRunReason.PumpDown => Say("pump down", "bomba parada"),
        NotRunReason.ValveBroken => Say("valve broken", "válvula rota"),
        NotRunReason.PipeBurst => Say("pipe burst", "tubo reventado"),
        NotRunReason.NoPower => Say("no power", "sin luz"),
        NotRunReason.Other => Say("other", "otra cosa"),
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "A reason of the list."),
    };

    /// <summary>Why an entry was not taken, and what to do.</summary>
    public string Refusal(ConfirmationResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Status switch
        {
            ConfirmationStatus.UnknownSet => Say($"{result.Problem} It may belong to a plan that was taken back; tell the manager.", "Este riego no existe: avise al encargado."),
            ConfirmationStatus.NotYet => Say(result.Problem!, "A esa hora todavía no llegamos. Confírmelo cuando haya regado; si regó antes, ponga a qué hora se abrió."),
            ConfirmationStatus.CorrectedBefore => Say(result.Problem!, $"{result.Receipt?.ConfirmedBy} ya lo corrigió. Mire lo que vale ahora y corríjalo otra vez si hace falta."),
            _ => Say(
                $"{result.Problem} Tell the manager if your figures differ.",
                result.Receipt is { } other ? $"{other.ConfirmedBy} ya confirmó este riego. Avise al encargado si sus números son otros." : "Esta agua ya está anotada. Avise al encargado si sus números son otros."),
        };
    }

    public string CautionTitle => Say("Before you open a valve or start a pump", "Antes de abrir una válvula o prender una bomba");

    public string CautionLead => Say("Advice, not an order.", "Es un consejo, no una orden.");

    public string CautionText => Say(
        "You are there, the program is not: what you see and what you are told on the estate come first.",
        "Usted está ahí, el programa no: primero vale lo que usted ve y lo que le dicen en la finca.");

    public IReadOnlyList<string> Cautions =>
    [
        Say("Keep clear of turning shafts, belts and couplings; never start a pump with its guard off.", "No se acerque a ejes, bandas y coples que giran; nunca prenda una bomba sin su guarda."),
        Say(
            "Electrical panels and wet ground do not go together: open no panel, and leave faults to an electrician.",
            "El tablero eléctrico y el suelo mojado no van juntos: no abra tableros, las fallas son para el electricista."),
        Say("Open and close valves slowly, and let the pressure out before you undo a fitting or a filter.", "Abra y cierre las válvulas despacio, y saque la presión antes de soltar una unión o un filtro."),
        Say(
            "Lock out and tag before working on a pump. Local codes and the maker’s instructions hold.",
            "Bloquee y etiquete antes de trabajar en una bomba. Valen las normas locales y las instrucciones del fabricante."),
    ];

    protected override IReadOnlyDictionary<string, string> Script => new Dictionary<string, string>
    {
        ["wrongHours"] = Say("Hours must be between 0 and 24, like 6.5", "Las horas van de 0 a 24, por ejemplo 6,5"),
        ["wrongMeter"] = Say($"The meter must show 0 {Units.Volume.Symbol} or more, like 171.5, or leave it empty", $"El medidor marca 0 {Units.Volume.Symbol} o más, por ejemplo 171,5; o déjelo vacío"),
        ["meterBackwards"] = Say("After must not be less than before", "Después no puede ser menos que antes"),
        ["wrongOpened"] = Say("Say when it was opened, like 20:15; it cannot be later than now", "Ponga a qué hora se abrió, como 20:15; no puede ser más tarde que ahora"),
        ["sayWhy"] = Say("Choose what went wrong", "Elija qué pasó"),
        ["sayWords"] = Say("Say in a few words what went wrong", "Diga en pocas palabras qué pasó"),
        ["sayWho"] = Say("Say who you are, like “Ana”", "Diga quién es, como «Ana»"),
        ["running"] = Say("● Running since {0} · {1} h", "● Regando desde las {0} · {1} h"),
        ["stopped"] = Say("Stopped after {0} h · not saved yet", "Parado después de {0} h · sin guardar"),
        ["doubtHours"] = Say("Planned {0} h: really {1}?", "Planeado {0} h: ¿de veras {1}?"),
        ["doubtEarly"] = Say("{0} h before the plan: really?", "{0} h antes de lo planeado: ¿de veras?"),
        ["doubtLate"] = Say("{0} h after the plan: really?", "{0} h después de lo planeado: ¿de veras?"),
        ["onlyRunning"] = Say("{0} running, only on this phone", "{0} regando, solo en este teléfono"),
        ["onlyTyped"] = Say("{0} not saved yet", "{0} sin guardar"),
        ["leftUnsaved"] = Say("{0} was begun on this phone, never saved, and is not listed any more. Tell the manager what ran.", "{0} se empezó en este teléfono, no se guardó y ya no está en la lista. Dígale al encargado qué se regó."),
        ["leftRead"] = Say("I have read it", "Ya lo leí"),
        ["couldNot"] = Say("could not run", "no se pudo regar"),
        ["photoWaits"] = Say("photo not sent yet", "foto sin enviar"),
        ["photoSent"] = Say("photo sent", "foto enviada"),
        ["photoRefused"] = Say("photo not taken: {0}", "foto no aceptada: {0}"),
        ["photoKept"] = Say("Photo kept on this phone, {0} kB", "Foto guardada en este teléfono, {0} kB"),
        ["photoBad"] = Say("This picture could not be read. Take another.", "No se pudo leer esta foto. Tome otra."),
        ["reason.PumpDown"] = Reason(NotRunReason.PumpDown),
        ["reason.ValveBroken"] = Reason(NotRunReason.ValveBroken),
        ["reason.PipeBurst"] = Reason(NotRunReason.PipeBurst),
        ["reason.NoPower"] = Reason(NotRunReason.NoPower),
        ["reason.Other"] = Reason(NotRunReason.Other),
    };

    /// <summary>How people call the night that begins on a day.</summary>
    public string Night(DateOnly night, DateTimeOffset now, bool running) => (running, night.DayNumber - DateOnly.FromDateTime(now.DateTime).DayNumber) switch
    {
        (true, _) => Say($"Running now, from {Day(night)}", $"Regando ahora, desde el {Day(night)}"),
        (_, -1) => Say($"Last night, {Day(night)}", $"Anoche, {Day(night)}"),
        (_, 0) => Say($"Tonight, {Day(night)}", $"Esta noche, {Day(night)}"),
        (_, 1) => Say($"Tomorrow night, {Day(night)}", $"Mañana en la noche, {Day(night)}"),
        _ => Say($"Night of {Day(night)}", $"Noche del {Day(night)}"),
    };
}
