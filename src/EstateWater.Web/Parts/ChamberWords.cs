using EstateWater.Web.Parts.Field;

namespace EstateWater.Web.Parts;

/// <summary>What to mind with a pressure chamber, in a paragraph.</summary>
/// <param name="language">The reader's language.</param>
public sealed class ChamberWords(FieldLanguage language) : FieldWords(language)
{
    public string Caution => Say("Caution", "Cuidado");

    public string Chamber => Say("Pressure chamber:", "Cámara de presión:");

    public string Text => Say(
        "it holds compressed gas. Wear eye protection, never look over the lid, lock it before opening the valve, let the pressure off before unlocking, and secure the cylinder. Do not work alone in heat: shade, water and breaks. The maker’s instructions and local rules come first.",
        "lleva gas a presión. Use lentes de seguridad, nunca se asome sobre la tapa, trábela antes de abrir la válvula, saque la presión antes de destrabarla y amarre el cilindro. Con calor no trabaje solo: sombra, agua y descansos. Primero valen las instrucciones del fabricante y las normas locales.");
}
