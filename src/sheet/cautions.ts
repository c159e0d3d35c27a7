/**
 * The cautions of the work around a tile, once, for the page and for what is printed.
 * Figures and who says so: the sources named with each. No doses, no medical, electrical or legal advice.
 */
export interface Caution {
  readonly topic: string;
  readonly words: string;
  readonly source: string;
}

export const CAUTIONS_FIRST =
  'Local rules, the labels of products and licensed people come first. This is no medical, electrical or legal advice.';

export const CAUTIONS: readonly Caution[] = [
  {
    topic: 'Palytoxin',
    words:
      'Zoanthids (Palythoa and others) that grow on a base or rock can poison through skin, eyes and breath. Never boil, steam, scrub hot or dry-saw them. Wear gloves and eye protection and air the room. Signs may come hours later and reach others in the house: a metal taste, fever, cough, weakness. Get medical help and say the word palytoxin.',
    source:
      'Hamade et al. 2015, CDC Morb. Mortal. Wkly. Rep. 64: 852-855; Schulz et al. 2019, Arh. Hig. Rada Toksikol. 70: 14-17',
  },
  {
    topic: 'Blades and saws',
    words:
      'Keep guards on, wear eye protection, cut wet, tie back sleeves and hair, keep hands out of the line of the blade, and pull the plug before you change it. Splash and chips carry slime and toxin.',
    source: 'workplace safety rules such as US OSHA 29 CFR 1910.133 (from memory)',
  },
  {
    topic: 'Dust of skeleton',
    words: 'Cut wet. Do not sand dry skeleton without a mask made for fine dust.',
    source: 'workplace safety rules (from memory)',
  },
  {
    topic: 'Instant glue (cyanoacrylate)',
    words:
      'It bonds skin and eyelids within seconds and heats up on cotton. Do not pull: soak in warm soapy water and roll or peel gently. No solvent near eyes or lips. Eye or mouth: get medical help. Air the room.',
    source: 'Ontario Poison Centre and US poison centres, advice to the public',
  },
  {
    topic: 'Epoxy and other cements',
    words:
      'They heat up and give off fumes while they cure. Follow the label for time, amount and ventilation.',
    source: 'labels (common practice, no source)',
  },
  {
    topic: 'Electricity by salt water',
    words:
      'Use a residual-current breaker (30 mA; where the US code holds, a ground-fault interrupter of about 5 mA). Let every cable hang in a drip loop, keep hands dry, switch off before you reach in, and leave the wiring to a licensed electrician.',
    source: 'IEC 60364 and the US National Electrical Code (from memory)',
  },
  {
    topic: 'Vibrio in wounds',
    words:
      'Keep open cuts out of salt water or under a waterproof cover and wash them at once. Redness that spreads, or fever: see a doctor the same day. Liver disease or weak immunity make the danger greater.',
    source: 'US CDC, advice on Vibrio and health alert of 2023 (from summaries)',
  },
  {
    topic: 'Mycobacterium marinum',
    words:
      'Wear waterproof gloves over any cut and wash hands and forearms afterwards. For a lump or sore that does not heal, weeks or even months later, tell the doctor about the tank.',
    source: 'US state and county health departments, advice to the public',
  },
  {
    topic: 'Dips',
    words:
      'Iodine and peroxide dips: follow the label, try one spare piece first, never mix chemicals, wear gloves and goggles, keep them from children. Some genera bear them badly. No controlled dose was found for these genera, so none is given here.',
    source: 'no dose found; labels',
  },
  {
    topic: 'Waste water and tools',
    words:
      'Let no tank water, rock or coral get into the sea or into drains that lead there. Disinfect tools, and rinse them away from livestock.',
    source: 'local biosecurity rules (from memory)',
  },
  {
    topic: 'Collecting and transport',
    words:
      'All stony corals (Scleractinia) are listed in CITES Appendix II. Cuttings and cultured pieces need papers at borders too; the exemption for sand and fragments means dead bits that cannot be identified, never live cuttings. National law can be stricter.',
    source: 'CITES Appendices; Resolution Conf. 11.10 (Rev.); Notification to the Parties 2002/072',
  },
];
