using EstateWater.Web.Parts.Field;

namespace EstateWater.Web.Features.Sets;

/// <summary>The words of the irrigator's page.</summary>
/// <param name="language">The reader's language.</param>
public sealed class SetsWords(FieldLanguage language) : FieldWords(language);
