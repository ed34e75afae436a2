using EstateWater.Web.Parts.Units;
using Microsoft.AspNetCore.Components;

namespace EstateWater.Web.Parts;

/// <summary>What every page and part of one knows: how its reader is told quantities.</summary>
public abstract class ReaderComponent : ComponentBase
{
    /// <summary>The reader's units.</summary>
    [CascadingParameter] public UnitChoice Units { get; set; } = UnitChoice.Metric;
}
