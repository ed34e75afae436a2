namespace EstateWater.Web.Parts.Field;

/// <summary>The rules that all entries of the field pages share, as whoever sent one is told them.</summary>
/// <param name="language">The sender's language.</param>
/// <param name="instant">An instant as an example, at an hour at which such entries are made.</param>
public abstract class EntryRules(FieldLanguage language, string instant) : FieldWords(language)
{
    /// <summary>An instant as it is written.</summary>
    protected string Instant { get; } = instant;

    public string Id => Say("An entry needs its id, a UUID made on the phone.", "Al registro le falta su id, un UUID hecho en el teléfono.");

    public string EnteredAt => Say($"An entry says when it was made, like {Instant}.", $"Al registro le falta cuándo se hizo, como {Instant}.");

    public string Note(int longest) => Say($"A note has at most {longest} letters.", $"Una nota tiene {longest} letras a lo más.");
}
