# About the numbers: methods, equations, limits and sources, as the code has them.

# Fixed texts of the page.
page-title = About the numbers
page-intro = How each kind of number is worked out, where that holds and where it ends, and what it rests on. Every finding and figure opens to its own arithmetic and source as well.
page-limit = Where it ends
page-rests = Rests on
page-trust = How far a value may be trusted
page-trustAbout = Every value of the catalogue carries its source and one of four grades: published, where it was read in the source named; computed from a published equation; stated by sellers of such a material; or from memory, to be looked up before anything depends on it. What is not known is said, and no figure is not a good figure.
page-sources = Where the data come from: { $count } sources
page-caution = It is a calculator for planning. It replaces no challenge test, no stability test and no safety assessment; local rules decide.
page-heads--composition = Composition
page-heads--batch = Batch to fill
page-heads--rounding = Weigh sheet
page-heads--solubility = What dissolves
page-heads--ph = The pH
page-heads--preservation = Preservation
page-heads--emulsion = Emulsions
page-heads--glycerite = Glycerites and solutions
page-heads--cooling = Cooling
page-heads--dates = Dates
page-heads--colour = Colour
page-methods--composition = Each line is taken apart into the constituents its material brings, composites within composites as well, and what the lines bring is added up: c is the percent of a constituent in the product, pᵢ the percent of a line and wᵢ the share of the constituent in what is weighed there. The q.s. line is what is missing to 100 %.
page-methods--batch = n containers of volume V, h of each left empty, a product of density ρ, and the share l that stays on walls and tools. Where no density was measured it is estimated from those of the materials, as if volumes added.
page-methods--rounding = Each mass first gets the whole steps of its scale; the steps still missing go one each to the lines with the largest remainders. So the sheet sums to the batch and no line is off by a step or more.
page-methods--solubility = Between two published temperatures the logarithm of the solubility is a straight line over the reciprocal of the absolute temperature T. Alcohol, glycols and glycerin in the water multiply it, each by its power σ and its share f of the solvent by volume.
page-methods--ph = The pH at which all charges cancel: m is what is dissolved of each species in mol per kg of water, z its charge, I the ionic strength, γ how much of it counts, and A follows from temperature and water. Constants are those at no ionic strength, moved to the temperature where that is known.
page-methods--preservation = Of a weak acid only the undissociated share a is counted. Of what does not dissociate, the water of an emulsion keeps so much freely: C is the concentration in the whole, φ the volume of oil to that of water, K how it parts between them, S the surfactant whose micelles hold it and k how strongly. What acts is compared with the published concentration that stops each kind of microbe, and with more than that, for killing takes more.
page-methods--emulsion = What a blend of non-ionic emulsifiers supplies, and what an oil phase asks for, is each the mean weighted by mass m. Beside it, drops that fill more than 64 % of the volume touch, and above 74 % they are pressed flat.
page-methods--glycerite = Masses of glycerin, water, other solvents and plant solids are kept apart from plan to bottle. Density, refraction, flow and frost follow from published tables of glycerol and water; the water activity from one curve through published forms, x being the mole fraction of glycerol. It is judged by its upper end, for too low a value would call a liquid better kept than it is. Alcohol follows the legal alcoholometric tables.
page-methods--cooling = From the temperatures you note, the surroundings Tₛ and the time t, k is fitted and the time to a temperature forecast with its band. The temperature of phases that are combined follows from their masses and specific heats.
page-methods--dates = Without stability data a product keeps no longer than its first material to expire, nor than such a product usually does: preserved water 12 months untested. What keeps more than 30 months is labelled with a period after opening instead of a date.
page-methods--colour = A photo is read against a matt white in the same light, channel by channel, and turned into CIELAB. The difference to the first day is that of CIEDE2000; a fade is fitted as first-order decay.
page-limits--composition = Nothing is rounded on the way, and what a line brings always sums to the line. A composite is as exact as the composition that is stated for it; a typical one is a middle of what sellers state.
page-limits--batch = Mixing shrinks water and glycerin by up to about 1 %, and an emulsion holds air. A measured density is better.
page-limits--rounding = The error shown is that of rounding alone. What the scale itself is off by is not known here.
page-limits--solubility = Far from its published temperatures there is no answer. The rule for mixtures misses by 0.3 to 0.5 of a logarithm as a matter of course; a finding says the range and is a stop only where even the best of it is too little.
page-limits--ph = To an ionic strength of 0.5 mol/kg and from 0 to 50 °C; beyond that no model here holds and it says so. Solids that form, gas that leaves, and what micelles and polymers bind are left out; much alcohol or glycol widens the band. A meter decides.
page-limits--preservation = Preservatives add up; no synergy is assumed. What micelles of charged surfactants hold is not counted, for no figure was found. Inhibitory concentrations of different laboratories differ several times over. It is no proof: a challenge test decides.
page-limits--emulsion = Published figures spread by about one unit. Up to two units off is no finding. For ionic emulsifiers, polymers and liquid crystals the balance says nothing, and then nothing is said.
page-limits--glycerite = Density holds from 15 to 30 °C, the curve of water activity to 95 % glycerol at 25 °C. What plants give is a range. Below a minimum of water activity microbes do not multiply, but cells and spores live on, and a drop of condensate is water.
page-limits--cooling = For surroundings that stay as they are and nothing that sets or melts on the way.
page-limits--dates = Usual times are common practice and no stability test. Local rules decide.
page-limits--colour = A telephone is no colorimeter: use the same place and the same light. Overexposed patches are refused.
page-equations--composition = c = Σ pᵢ · wᵢ
page-equations--batch = m = n · V · (1 − h) · ρ ÷ (1 − l);  1 ÷ ρ = Σ wᵢ ÷ ρᵢ
page-equations--solubility = ln s = a + b ÷ T;  s(mixture) = s(water) · 10^Σσf
page-equations--ph = Σ z · m = 0;  log γ = −A z² (√I ÷ (1 + √I) − 0.3 I)
page-equations--preservation = a = 1 ÷ (1 + 10^(pH − pKa));  free = C (φ + 1) ÷ (K φ + R),  R = 1 + k S
page-equations--emulsion = HLB = Σ mᵢ · HLBᵢ ÷ Σ mᵢ
page-equations--glycerite = a(water) = (1 − x) · exp(−1.14727 x² + 1.35471 x³)
page-equations--cooling = T = Tₛ + (T₀ − Tₛ) · e^(−k t)
page-sourcesOf--composition = Decimal arithmetic; mass is conserved to the last digit.
page-sourcesOf--batch = Mass = volume × density; ideal mixing.
page-sourcesOf--rounding = Largest remainder (Hamilton’s method of apportionment).
page-sourcesOf--solubility = van ’t Hoff; Yalkowsky’s log-linear rule; Li and Yalkowsky, Ind. Eng. Chem. Res. 37 (1998) 4470.
page-sourcesOf--ph = Davies, Ion Association (1962); Malmberg and Maryott, J. Res. NBS 56 (1956) 1.
page-sourcesOf--preservation = Henderson–Hasselbalch; Bean, J. Soc. Cosmet. Chem. 23 (1972) 703; Kazmi and Mitchell, J. Pharm. Sci. 67 (1978) 1260; Leo, Hansch and Elkins, Chem. Rev. 71 (1971) 525.
page-sourcesOf--emulsion = Griffin, J. Soc. Cosmet. Chem. 1 (1949) 311 and 5 (1954) 249.
page-sourcesOf--glycerite = Volk and Kähler, Exp. Fluids 59 (2018) 75; Hoyt, Oil & Soap 10 (1933) 43; Cheng, Ind. Eng. Chem. Res. 47 (2008) 3285; Scott, Adv. Food Res. 7 (1957) 83; Zhang, Grace and Sun, Drying Technol. 40 (2022) 2404; OIML R 22 (1975); ICUMSA SPS-3.
page-sourcesOf--cooling = Newton’s law of cooling; least squares with 95 % bands.
page-sourcesOf--dates = Regulation (EC) No 1223/2009, Article 19(1)(c), from memory of the text; common practice.
page-sourcesOf--colour = IEC 61966-2-1; CIE 15; CIE 142-2001, held to the pairs of Sharma, Wu and Dalal (2005).
