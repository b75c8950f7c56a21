import type { Path, Problem } from '../problem.ts';
import type { Condition, Father, Programme } from '../programme.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });

/** Ids that are used twice, and references to entries that do not exist. */
export function checkReferences(programme: Programme): Problem[] {
  const problems: Problem[] = [];
  const sections = ['facts', 'genes', 'traits', 'kinds', 'gardens', 'trees', 'pools', 'crosses', 'stocks', 'plans'] as const;
  const ids = Object.fromEntries(sections.map((section) => [section, new Set(programme[section].map(({ id }) => id))]));
  for (const section of sections) {
    const seen = new Set<string>();
    programme[section].forEach(({ id }, i) => {
      if (seen.has(id)) problems.push(stop([section, i, 'id'], `“${id}” is used twice`, 'Give one of the two another id.'));
      seen.add(id);
    });
  }
  const has = (section: (typeof sections)[number], id: string | undefined, path: Path) => {
    if (id !== undefined && ids[section]?.has(id) !== true)
      problems.push(stop(path, `there is no “${id}” among the ${section}`, 'Choose one that exists, or add it.'));
  };
  const traitOf = (type: 'shown' | 'measured', id: string, path: Path) => {
    const trait = programme.traits.find((entry) => entry.id === id);
    if (!trait) has('traits', id, path);
    else if (trait.type !== type)
      problems.push(
        stop(
          path,
          `“${trait.name}” is ${trait.type === 'shown' ? 'shown or not' : 'measured'}`,
          `Choose a trait that is ${type === 'shown' ? 'shown or not' : 'measured'}.`,
        ),
      );
  };
  const conditions = (list: readonly Condition[], path: Path) => {
    list.forEach((condition, i) => {
      if (condition.type === 'test') has('genes', condition.gene, [...path, i, 'gene']);
      else traitOf(condition.type, condition.trait, [...path, i, 'trait']);
      if (condition.type !== 'test' && condition.atLeast === undefined && condition.atMost === undefined)
        problems.push(stop([...path, i], 'asks for nothing', 'Say “at least” or “at most”.'));
    });
  };
  const keys = (record: Readonly<Record<string, unknown>>, check: (key: string) => void) => Object.keys(record).forEach(check);

  conditions(programme.goal.conditions, ['goal', 'conditions']);
  programme.traits.forEach((trait, t) => {
    if (trait.type === 'measured') trait.genes.forEach(({ gene }, i) => has('genes', gene, ['traits', t, 'genes', i, 'gene']));
    else
      trait.rules.forEach(({ needs }, r) => {
        const path = ['traits', t, 'rules', r, 'needs'];
        if (needs.needs === 'total') needs.genes.forEach((gene, i) => has('genes', gene, [...path, 'genes', i]));
        else needs.of.forEach(({ gene }, i) => has('genes', gene, [...path, 'of', i, 'gene']));
      });
  });
  programme.kinds.forEach(({ firstFruit }, k) => {
    if (!('between' in firstFruit)) return;
    has('kinds', firstFruit.between.seed, ['kinds', k, 'firstFruit', 'between', 'seed']);
    has('kinds', firstFruit.between.pollen, ['kinds', k, 'firstFruit', 'between', 'pollen']);
  });
  programme.trees.forEach((tree, t) => {
    has('kinds', tree.kind, ['trees', t, 'kind']);
    tree.gardens.forEach((garden, i) => has('gardens', garden, ['trees', t, 'gardens', i]));
    keys(tree.genes, (gene) => has('genes', gene, ['trees', t, 'genes', gene]));
    keys(tree.values, (trait) => traitOf('measured', trait, ['trees', t, 'values', trait]));
    keys(tree.seen, (trait) => traitOf('shown', trait, ['trees', t, 'seen', trait]));
    keys(tree.testCrosses, (trait) => traitOf('shown', trait, ['trees', t, 'testCrosses', trait]));
  });
  programme.pools.forEach((pool, p) => {
    pool.trees.forEach(({ tree }, i) => has('trees', tree, ['pools', p, 'trees', i, 'tree']));
    const { background } = pool;
    if (!background) return;
    const path = ['pools', p, 'background'];
    has('kinds', background.kind, [...path, 'kind']);
    keys(background.genes, (gene) => has('genes', gene, [...path, 'genes', gene]));
    keys(background.values, (trait) => traitOf('measured', trait, [...path, 'values', trait]));
    keys(background.spread, (trait) => traitOf('measured', trait, [...path, 'spread', trait]));
  });
  has('pools', programme.defaultPool, ['defaultPool']);
  programme.crosses.forEach((cross, c) => {
    for (const key of ['seed', 'pollen', 'gives'] as const) has('kinds', cross[key], ['crosses', c, key]);
    if (cross.weakness && 'fact' in cross.weakness.rootBorne) has('facts', cross.weakness.rootBorne.fact, ['crosses', c, 'weakness', 'rootBorne', 'fact']);
  });
  const routes = new Set(programme.crosses.flatMap((cross) => cross.routes.map(({ id }) => id)));
  programme.plans.forEach((plan, p) => {
    const known = new Set<string>();
    plan.generations.forEach((generation, g) => {
      const path: Path = ['plans', p, 'generations', g];
      const later = new Set(plan.generations.map(({ id }) => id));
      const parent = (source: Father, at: Path) => {
        if ('tree' in source) {
          has('trees', source.tree, [...at, 'tree']);
          return;
        }
        const [key, of] = 'sires' in source ? ['sires', source.sires] : ['picksOf', source.picksOf];
        if (known.has(of)) return;
        problems.push(
          stop(
            [...at, key],
            later.has(of) ? 'uses a pick that does not exist yet' : `there is no generation “${of}” in this plan`,
            g === 0 ? 'A first generation can only use named trees.' : 'Choose a tree, or picks of an earlier generation.',
          ),
        );
      };
      if (known.has(generation.id)) problems.push(stop([...path, 'id'], `“${generation.id}” is used twice in this plan`, 'Give one of the two another id.'));
      generation.seedParents.forEach((source, i) => parent(source, [...path, 'seedParents', i]));
      if (Array.isArray(generation.pollen)) generation.pollen.forEach((source, i) => parent(source, [...path, 'pollen', i]));
      has('pools', generation.pool, [...path, 'pool']);
      has('crosses', generation.cross, [...path, 'cross']);
      has('gardens', generation.garden, [...path, 'garden']);
      has('gardens', generation.backup?.garden, [...path, 'backup', 'garden']);
      has('stocks', generation.backup?.stock, [...path, 'backup', 'stock']);
      if (generation.rescue && generation.rescue.who !== 'none') has('stocks', generation.rescue.stock, [...path, 'rescue', 'stock']);
      has('genes', generation.test?.gene, [...path, 'test', 'gene']);
      if (generation.look) traitOf('shown', generation.look.trait, [...path, 'look', 'trait']);
      if (generation.route !== undefined && !routes.has(generation.route))
        problems.push(stop([...path, 'route'], `no cross entry knows “${generation.route}”`, 'Choose another way of raising seed.'));
      if (generation.after !== undefined && !known.has(generation.after))
        problems.push(stop([...path, 'after'], 'begins after a generation that comes later', 'Choose an earlier generation.'));
      conditions(generation.keep.conditions, [...path, 'keep', 'conditions']);
      keys(generation.keep.weights, (trait) => traitOf('measured', trait, [...path, 'keep', 'weights', trait]));
      known.add(generation.id);
    });
  });
  return problems;
}
