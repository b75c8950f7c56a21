/** The pictures under “more pictures”: few visits need them at once, so they are fetched when they are unfolded. */
import '../charts/busiest-years/busiest-years.ts';
import '../charts/flower-to-pick/flower-to-pick.ts';
import '../charts/last-spring/last-spring.ts';
import '../charts/why-futures-fail/why-futures-fail.ts';
import '../charts/years-against-trees/years-against-trees.ts';
import '../diary/diary.ts';
