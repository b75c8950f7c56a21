// Turns an input of the independent program (its form: the README beside it) into a document of ours.
const slug = (s) =>
  s
    .toLowerCase()
    .replace(/×/g, 'x')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
export function convert(o, { plantOutAge = 1, word = 'word', runs = 4000 } = {}) {
  const est = (e) => {
    if (e === undefined) return undefined;
    if (typeof e === 'number') return e;
    if ('low' in e) return { ...e };
    if ('hits' in e) {
      const { flowersPerUnit, ...r } = e;
      return { ...r, ...(flowersPerUnit ? { unit: { name: `cluster of ${flowersPerUnit} flowers`, flowers: flowersPerUnit } } : {}) };
    }
    return e;
  };
  const clean = (x) => Object.fromEntries(Object.entries(x).filter(([, v]) => v !== undefined));
  const need = (r) =>
    'all' in r || 'any' in r
      ? { needs: 'all' in r ? 'all' : 'any', of: Object.entries(r.all ?? r.any).map(([gene, copies]) => ({ gene: slug(gene), copies })) }
      : { needs: 'total', genes: r.total.genes.map(slug), copies: r.total.atLeast };
  const cond = (c) =>
    'shown' in c
      ? clean({ type: 'shown', trait: slug(c.shown), grade: c.grade ?? 'any', atLeast: c.atLeast, atMost: c.atMost })
      : 'measured' in c
        ? clean({ type: 'measured', trait: slug(c.measured), atLeast: c.atLeast, atMost: c.atMost })
        : { type: 'test', gene: slug(c.gene) };
  const rec = (r, f) => Object.fromEntries(Object.entries(r ?? {}).map(([k, v]) => [slug(k), f(v)]));
  const marks = 'ABCDEFGH';
  return clean({
    format: 'orchard-odds programme',
    version: 2,
    title: o.title,
    example: true,
    note: o.note,
    startYear: o.startYear,
    lastYear: o.horizonYear,
    shuffleWord: word,
    runs,
    goal: { conditions: o.goal.conditions.map(cond), crops: o.goal.of, trees: o.goal.trees ?? 1, breedsTrue: !!o.goal.breedsTrue },
    limits: clean({
      places: o.places,
      hoursPerYear: o.hoursPerYear,
      bloomDays: o.hands?.bloomDays ?? 30,
      hoursADay: o.hands?.hoursADay ?? 10,
      flowersAnHour: o.hands?.flowersAnHour ?? 1000,
    }),
    hours: o.hours ?? {},
    money: o.money,
    weather: clean({
      frostChance: est(o.frost?.chance ?? 0),
      frostTakes: est(o.frost?.takes ?? 0),
      springLuckSet: o.luck ?? 0.1,
      springLuckGermination: o.luckGermination ?? 0.1,
    }),
    facts: Object.entries(o.facts ?? {}).map(([n, c]) => ({ id: slug(n), name: n, chance: est(c) })),
    genes: Object.entries(o.genes ?? {}).map(([n, g]) => clean({ id: slug(n), name: n, group: g.group, position: g.cM })),
    traits: Object.entries(o.traits).map(([n, t]) =>
      t.type === 'shown'
        ? clean({
            type: 'shown',
            id: slug(n),
            name: n,
            rules: (t.rule.oneOf ?? [{ name: 'as stated', value: t.rule, weight: 1 }]).map((r) => ({ name: r.name, weight: r.weight, needs: need(r.value) })),
            canShow: est(t.penetrance),
            seasonsShown: est(t.consistency),
            falseShow: est(t.falseShow),
            sharedSeason: t.sharedSeason,
            grade: t.gradeMean ? { mean: t.gradeMean, sd: t.gradeSd, fruitsCut: t.fruitsCut ?? 5 } : undefined,
            emptyIfShown: est(t.emptyIfShown),
          })
        : clean({
            type: 'measured',
            id: slug(n),
            name: n,
            unit: t.unit ?? 'unit',
            mean: t.base,
            sd: t.sd,
            heritability: t.h2,
            repeatability: t.t,
            travels: est(t.cloneShare),
            yearShare: est(t.yearShare),
            inbreeding: est(t.inbreeding),
          }),
    ),
    kinds: Object.entries(o.kinds).map(([n, k]) =>
      clean({
        id: slug(n),
        name: n,
        firstFruit: k.between
          ? { between: { seed: slug(k.between[0]), pollen: slug(k.between[1]) } }
          : typeof k.firstFruit === 'number' || !('half' in k.firstFruit)
            ? { years: est(k.firstFruit) }
            : { earliest: est(k.firstFruit.earliest), half: est(k.firstFruit.half), ninety: est(k.firstFruit.ninety) },
        familySpread: k.familyCv,
        neverFruits: est(k.neverFruits),
        firstYearLoss: est(k.firstYearLoss),
        yearlyLoss: est(k.yearlyLoss),
        regularity: est(k.regularity),
        frostShare: est(k.frostShare),
        flowers: est(k.flowers),
        yearsToFullBloom: k.yearsToFullBloom,
        fertilityAsSeedParent: est(k.fertilitySeed),
        fertilityAsPollenParent: est(k.fertilityPollen),
        nurseryShare: k.nurseryShare,
        plantOutAge: k.plantOutAge ?? plantOutAge,
        waitYears: k.waitYears,
        selfCompatible: k.selfCompatible,
        seedsPerFruit: est(k.seeds),
        seedsAtMost: k.atMost,
      }),
    ),
    gardens: Object.entries(o.gardens ?? {}).map(([n, l]) => ({ id: slug(n), name: n, yearlyLoss: est(l) })),
    trees: Object.entries(o.trees).map(([n, t]) =>
      clean({
        id: slug(n),
        name: n,
        kind: slug(t.kind),
        flowers: est(t.flowers ?? 1000),
        copies: t.copies,
        gardens: t.gardens?.map(slug),
        yearlyLoss: est(t.yearlyLoss),
        bearsFrom: t.bearsFrom,
        genes: rec(t.genes, (g) => (typeof g === 'number' ? { copies: g } : { frequency: est(g.frequency) })),
        values: rec(t.values, est),
        seen: rec(t.seen, (x) => x),
      }),
    ),
    pools: Object.entries(o.pools ?? {}).map(([n, p]) =>
      clean({
        id: slug(n),
        name: n,
        trees: Object.entries(p.trees ?? {}).map(([tr, weight]) => ({ tree: slug(tr), weight })),
        background: p.background
          ? {
              trees: p.background.n,
              weight: p.background.weight,
              kind: slug(p.background.kind),
              genes: rec(p.background.genes, est),
              values: rec(p.background.values, est),
              spread: rec(p.background.spread, (x) => x),
            }
          : undefined,
      }),
    ),
    defaultPool: o.defaultPool && slug(o.defaultPool),
    crosses: o.crosses.map((c) =>
      clean({
        id: slug(c.id),
        name: c.id,
        seed: slug(c.seed),
        pollen: slug(c.pollen),
        gives: slug(c.gives ?? c.seed),
        set: est(c.set),
        straySet: est(c.straySet),
        emptyFruit: est(c.seedless),
        seedsPerFruit: est(c.seeds),
        seedsAtMost: c.atMost,
        germination: est(c.germination ?? Object.values(c.routes)[0]),
        routes: c.routes ? Object.entries(c.routes).map(([n, g]) => ({ id: slug(n), name: n, germination: est(g) })) : undefined,
        dormancy: c.dormancy,
        weakness:
          c.weakShare !== undefined
            ? {
                share: est(c.weakShare),
                onset: est(c.weakOnset ?? 0),
                course: c.weakSurvivors ? { alive: est(c.weakSurvivors.alive), atYears: c.weakSurvivors.years } : { halfLife: est(c.weakHalfLife) },
                rootBorne: c.rootBorne?.fact ? { fact: slug(c.rootBorne.fact) } : { chance: est(c.rootBorne ?? 0) },
              }
            : undefined,
      }),
    ),
    stocks: Object.entries(o.stocks ?? {}).map(([n, s]) =>
      clean({
        id: slug(n),
        name: n,
        yearlyLoss: est(s.yearlyLoss),
        place: s.places,
        precocity: est(s.precocity),
        takeTender: est(s.takeTender),
        takeRipe: est(s.takeRipe),
        ripeMonths: s.ripeMonths,
        fertility: est(s.fertility),
      }),
    ),
    plans: o.plans.map((p, i) =>
      clean({
        id: slug(p.name),
        mark: marks[i],
        name: p.name,
        clearDiscards: p.clearDiscards,
        generations: p.generations
          .map((g) => {
            const par = (x) => (x.startsWith('picks:') ? { picksOf: slug(x.slice(6)) } : { tree: slug(x) });
            return clean({
              id: slug(g.name),
              name: g.name,
              seedParents: g.seedParents.map(par),
              pollen: typeof g.pollenParents === 'string' ? g.pollenParents : g.pollenParents.map(par),
              reciprocal: g.reciprocal,
              selfs: g.selfs,
              pool: g.pool && slug(g.pool),
              cross: g.cross && slug(g.cross),
              route: g.route && slug(g.route),
              cover: g.cover,
              flowers: g.flowers ?? 0,
              seedlings: g.seedlings,
              springs: g.springs,
              after: g.after && slug(g.after),
              garden: g.garden && slug(g.garden),
              repeat: g.repeat,
              judge: g.judge,
              test: g.test
                ? {
                    gene: slug(g.test.gene),
                    copies: g.test.atLeast,
                    falsePositive: g.test.falsePositive,
                    falseNegative: g.test.falseNegative,
                    cull: g.test.cull,
                  }
                : undefined,
              look: g.look
                ? { trait: slug(g.look.trait), keepIfShown: g.look.keepIfShown, falsePositive: g.look.falsePositive, falseNegative: g.look.falseNegative }
                : undefined,
              rescue: g.rescue,
              keep: clean({
                conditions: (g.keep.conditions ?? []).map(cond),
                rank: g.keep.rank,
                weights: g.keep.weights ? rec(g.keep.weights, (x) => x) : undefined,
                howMany: g.keep.howMany,
                bestLeft: g.keep.bestLeft,
              }),
              goOn: g.goOn ? clean({ when: g.goOn.when, count: g.goOn.count, atLatest: g.goOn.atLatest }) : undefined,
              backup: g.backup ? clean({ copies: g.backup.copies, stock: slug(g.backup.stock), garden: g.backup.garden && slug(g.backup.garden) }) : undefined,
            });
          })
          .map((g) => ({ ...g, rescue: g.rescue ? { ...g.rescue, stock: slug(g.rescue.stock) } : undefined }))
          .map(clean),
      }),
    ),
  });
}
