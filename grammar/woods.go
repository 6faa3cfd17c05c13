package grammar

// woods are the species of the wood table and what shops call them.
var woods = []entry{
	{kindWood, "hard maple", "hard maple, hd maple, hrd maple, h maple, maple, sugar maple, rock maple, hd maple, h maple, hrd maple"},
	{kindWood, "soft maple", "soft maple, red maple, sft maple"},
	{kindWood, "silver maple", "silver maple"},
	{kindWood, "white oak", "white oak, w oak, wo, whiteoak, wh oak, wht oak, w/oak, whi oak"},
	{kindWood, "red oak", "red oak, oak, northern red oak, redoak, r oak, rd oak"},
	{kindWood, "cherry", "cherry, black cherry"},
	{kindWood, "walnut", "walnut, black walnut, blk walnut, wal, wlnt"},
	{kindWood, "ash", "ash, white ash"},
	{kindWood, "yellow birch", "yellow birch, birch"},
	{kindWood, "paper birch", "paper birch, white birch"},
	{kindWood, "beech", "beech, american beech, european beech"},
	{kindWood, "hickory", "hickory, shagbark hickory, mockernut hickory, true hickory"},
	{kindWood, "pecan", "pecan, pecan hickory"},
	{kindWood, "poplar", "poplar, yellow poplar, tulipwood, tulip poplar"},
	{kindWood, "alder", "alder, red alder"},
	{kindWood, "basswood", "basswood, linden, lime, limewood"},
	{kindWood, "butternut", "butternut"},
	{kindWood, "sweetgum", "sweetgum, sweet gum"},
	{kindWood, "sycamore", "sycamore, american sycamore"},
	{kindWood, "mahogany", "mahogany, true mahogany, honduras mahogany, hog"},
	{kindWood, "african mahogany", "african mahogany, khaya"},
	{kindWood, "sapele", "sapele, sapelli"},
	{kindWood, "teak", "teak"},
	{kindWood, "douglas-fir", "douglas fir, doug fir, fir, douglasfir, df"},
	{kindWood, "longleaf pine", "longleaf pine, southern pine, southern yellow pine, syp, yellow pine"},
	{kindWood, "loblolly pine", "loblolly pine, loblolly"},
	{kindWood, "white pine", "white pine, eastern white pine, pine"},
	{kindWood, "ponderosa pine", "ponderosa pine, ponderosa"},
	{kindWood, "western redcedar", "western redcedar, cedar, western red cedar, red cedar, wrc"},
	{kindWood, "redwood", "redwood"},
	{kindWood, "sitka spruce", "sitka spruce, spruce, sitka"},
	{kindWood, "", "balsa, iroko, wenge, zebrawood, padauk, purpleheart, bubinga, cocobolo, rosewood, ebony, bamboo, elm, chestnut, sweet chestnut, hornbeam, pearwood, applewood, larch, hemlock, cypress, yew, juniper, jarrah, karri, blackbutt, spotted gum, merbau, kwila, meranti, luan, lauan, utile, obeche, okoume, jatoba, ipe, cumaru, black locust, robinia, osage orange, mesquite, catalpa, paulownia, kauri, rimu, radiata, huon pine, aspen, cottonwood, tupelo, hackberry, persimmon, koa, acacia, rubberwood, tigerwood, lacewood, afrormosia, greenheart, opepe, keruing, balau, eucalyptus, sheoak, lignum vitae, tasmanian oak, victorian ash"}, // the table lacks them
	{kindWoodSort, "sort", "figured, curly, clear, rough, rough sawn, sawn, kd, kiln dried, air dried, ad, solid, select, fas, spalted, birdseye, green, straight grained, straight, planed, dressed, s4s, s2s, surfaced, nice, dry, heavy, dark, pale, steamed, reclaimed, wood, timber, hardwood, softwood, veneer grade, lumber, machined, jointed, finished, sanded, ripped, thin, resawn, prime, knotty, domestic"},
}

// glues are the classes of the glue table and what shops call them.
var glues = []entry{
	{kindGlue, "pva", "pva, white wood glue, white glue, white, type ii pva, type ii, type 2, type two, type 2 pva, type ii glue, d2, d3, d3 pva, d2 pva, pva d3, pva d2, pva glue, polyvinyl acetate, pvac, d3 glue, white pva"},
	{kindGlue, "crosslinked-pva", "crosslinked pva, d4, d4 pva, pva d4, type i, type 1, type one, type i pva, type 1 pva, crosslinking pva, cross linking pva, cross linked pva, type i glue, d4 glue, crosslinking, crosslinked, cross linked"},
	{kindGlue, "aliphatic", "aliphatic, yellow glue, yellow, carpenters glue, aliphatic resin, yellow wood glue, yellow pva, carpenter glue, aliphatic glue"},
	{kindGlue, "urea-formaldehyde", "urea formaldehyde, uf, plastic resin, urea, uf powder, urea glue, uf glue, plastic resin glue, urea resin, powdered resin, uf resin, urea powder"},
	{kindGlue, "resorcinol", "resorcinol, phenol resorcinol, prf, resorcinol glue, rf glue"},
	{kindGlue, "melamine-urea", "melamine urea, mu, muf, melamine glue, melamine urea formaldehyde, muf glue"},
	{kindGlue, "polyurethane", "polyurethane, pur, pu, 1c pur, pur glue, polyurethane glue, pu glue, one component pur, poly glue, one part pur, foaming polyurethane, 1k pur, 1k pu"},
	{kindGlue, "emulsion-isocyanate", "emulsion isocyanate, epi, epi glue, emulsion polymer isocyanate"},
	{kindGlue, "epoxy", "epoxy, two part epoxy, epoxies, thickened epoxy, 2 part epoxy, two pack epoxy, epoxy resin, epoxied, slow epoxy, marine epoxy"},
	{kindGlue, "hot-hide", "hot hide, hide glue, animal glue, hot hide glue, hide, hot glue pot glue, pearl glue, bone glue, scotch glue"},
	{kindGlue, "liquid-hide", "liquid hide, liquid hide glue, bottled hide glue, room temperature hide glue"},
	{kindGlue, "casein", "casein, casein glue, milk glue"},
}
