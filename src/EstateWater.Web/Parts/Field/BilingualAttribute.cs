namespace EstateWater.Web.Parts.Field;

/// <summary>Marks a page that is read in its reader's language although it stands in the layout of the desk, whose menu is English.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class BilingualAttribute : Attribute;
