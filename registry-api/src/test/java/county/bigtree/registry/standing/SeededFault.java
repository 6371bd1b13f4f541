package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Supplier;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.Contention;
import county.bigtree.domain.standing.ScoreSpan;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.domain.standing.TitleChanges;
import county.bigtree.domain.standing.TreeFacts;
import county.bigtree.domain.standing.VisitFigures;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Ways in which the recording could be wrong. Each takes the place of one part of it, and
 * must be found by the random histories.
 */
enum SeededFault implements Consumer<AnnotationConfigApplicationContext> {

	ROWS_ARE_NOT_CLOSED {
		@Override
		ScoreRows rows(JdbcClient jdbc) {
			return new ScoreRows(jdbc) {
				@Override
				void close(Change change, ScoreRow row, ScoreSpan closed) {
				}
			};
		}
	},
	ROWS_CLOSE_A_DAY_LATE {
		@Override
		ScoreRows rows(JdbcClient jdbc) {
			return new ScoreRows(jdbc) {
				@Override
				void close(Change change, ScoreRow row, ScoreSpan closed) {
					LocalDate until = closed.until();
					super.close(change, row, new ScoreSpan(closed.scored(), closed.from(),
							(until != null) ? until.plusDays(1) : null, closed.ended()));
				}
			};
		}
	},
	ROWS_ARE_NOT_WITHDRAWN {
		@Override
		ScoreRows rows(JdbcClient jdbc) {
			return new ScoreRows(jdbc) {
				@Override
				void withdraw(Change change, ScoreRow row, String why) {
				}
			};
		}
	},
	TIME_CHANGES_NO_ROW {
		@Override
		ScoreRows rows(JdbcClient jdbc) {
			return new ScoreRows(jdbc) {
				@Override
				void judge(List<ScoreRow> rows, Rulebook rulebook, LocalDate day) {
					super.judge(rows, rulebook, day.minusDays(1));
				}
			};
		}
	},
	NEW_RULES_JUDGE_ONLY_WHAT_TURNS {
		@Override
		ScoreRows rows(JdbcClient jdbc) {
			return new ScoreRows(jdbc) {
				@Override
				List<ScoreRow> open(BookKey book) {
					return List.of();
				}
			};
		}
	},
	CONTENDERS_STOP_AT_THE_LEADER {
		@Override
		ScoreRows rows(JdbcClient jdbc) {
			return new ScoreRows(jdbc) {
				@Override
				List<ScoreRow> contenders(BookKey book, Rulebook rulebook) {
					return super.contenders(book, rulebook).stream().limit(1).toList();
				}
			};
		}
	},
	TURNING_DAYS_ARE_FORGOTTEN {
		@Override
		ScoreRows rows(JdbcClient jdbc) {
			return new ScoreRows(jdbc) {
				@Override
				List<ScoreRow> turning(BookKey book, LocalDate day) {
					return super.turning(book, day.minusDays(1));
				}
			};
		}
	},
	EVENTS_ARE_STAMPED_AN_HOUR_LATE {
		@Override
		Books books(JdbcClient jdbc) {
			return new Books(jdbc) {
				@Override
				void advance(BookKey key, Instant at, int treesAdded, CountyRules rules) {
					super.advance(key, at, treesAdded, rules);
					jdbc.sql(
							"update book set next_event_at = next_event_at + interval '1 hour' where county = ? and species = ?")
						.params(key.county(), key.species())
						.update();
				}
			};
		}
	},
	RULEBOOKS_OF_LATER_DAYS_ARE_FORGOTTEN {
		@Override
		Books books(JdbcClient jdbc) {
			return new Books(jdbc) {
				@Override
				void advance(BookKey key, Instant at, int treesAdded, CountyRules rules) {
					super.advance(key, at, treesAdded,
							new CountyRules(rules.zone(), new county.bigtree.domain.rulebook.Rulebooks(List.of())));
				}
			};
		}
	},
	RULEBOOKS_WAKE_NO_BOOK {
		@Override
		Books books(JdbcClient jdbc) {
			return new Books(jdbc) {
				@Override
				void expect(String county, Instant event) {
				}
			};
		}
	},
	TREES_ARE_COUNTED_TWICE {
		@Override
		Books books(JdbcClient jdbc) {
			return new Books(jdbc) {
				@Override
				void advance(BookKey key, Instant at, int treesAdded, CountyRules rules) {
					super.advance(key, at, Math.abs(treesAdded), rules);
				}
			};
		}
	},
	CO_CHAMPIONS_STAY {
		@Override
		TitleSpans titles(JdbcTemplate jdbc) {
			return new TitleSpans(jdbc) {
				@Override
				void end(BookKey book, Instant at, List<TitleChanges.Change> ended) {
					super.end(book, at, ended.stream().filter((change) -> change.title() == Title.CHAMPION).toList());
				}
			};
		}
	},
	TITLES_BEGIN_A_SECOND_LATE {
		@Override
		TitleSpans titles(JdbcTemplate jdbc) {
			return new TitleSpans(jdbc) {
				@Override
				void begin(BookKey book, Instant at, List<TitleChanges.Change> began, List<ScoredTree> scores) {
					super.begin(book, at.plusSeconds(1), began, scores);
				}
			};
		}
	},
	TITLES_ARE_NOT_EXCHANGED {
		@Override
		TitleSpans titles(JdbcTemplate jdbc) {
			return new TitleSpans(jdbc) {
				@Override
				Map<UUID, Title> open(BookKey book) {
					Map<UUID, Title> open = super.open(book);
					open.replaceAll((tree, title) -> Title.CHAMPION);
					return open;
				}
			};
		}
	},
	REVOKED_SIGN_OFFS_STILL_COUNT {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return with(facts, facts.measurements().stream().map(SeededFault::unrevoked).toList(), facts.conditions());
		}
	},
	SET_ASIDE_STILL_COUNTS {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return with(facts, facts.measurements()
				.stream()
				.map((one) -> new TreeFacts.Measured(one.measurement(), one.measuredOn(), one.filedAt(), one.figures(),
						one.carriedOver(), false, one.broughtBy(), one.requiredSignOffs(), one.signOffs()))
				.toList(), facts.conditions());
		}
	},
	THE_LATEST_FILED_COUNTS_WHATEVER_ITS_DAY {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return with(facts,
					facts.measurements()
						.stream()
						.filter(TreeFacts.Measured::counts)
						.max(java.util.Comparator.comparing(TreeFacts.Measured::filedAt))
						.stream()
						.toList(),
					facts.conditions());
		}
	},
	ONE_SIGN_OFF_IS_ALWAYS_ENOUGH {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return with(facts,
					facts.measurements()
						.stream()
						.map((one) -> new TreeFacts.Measured(one.measurement(), one.measuredOn(), one.filedAt(),
								one.figures(), one.carriedOver(), one.setAside(), one.broughtBy(), 1, one.signOffs()))
						.toList(),
					facts.conditions());
		}
	},
	CONDITIONS_HOLD_FROM_THE_DAY_OBSERVED {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return with(facts, facts.measurements(),
					facts.conditions()
						.stream()
						.map((found) -> new TreeFacts.Found(found.condition(), found.observedOn(), found.observedOn(),
								found.recordedAt()))
						.toList());
		}
	},
	NOT_FOUND_ENDS_A_TREE {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return with(facts, facts.measurements(),
					facts.conditions()
						.stream()
						.map((found) -> (found.condition() != Condition.NOT_FOUND) ? found
								: new TreeFacts.Found(Condition.REMOVED, found.observedOn(), found.holdsFrom(),
										found.recordedAt()))
						.toList());
		}
	},
	SIGHTINGS_ARE_FORGOTTEN {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return with(facts, facts.measurements(),
					facts.conditions().stream().filter((found) -> found.condition() != Condition.UPRIGHT).toList());
		}
	},
	ACCEPTED_OR_NOT {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return new TreeFacts(facts.tree(), true, facts.measurements(), facts.conditions(), facts.rulings());
		}
	},
	STEM_RULINGS_ARE_FORGOTTEN {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return new TreeFacts(facts.tree(), facts.onTheBooks(), facts.measurements(), facts.conditions(), List.of());
		}
	},
	STEM_RULINGS_KEEP_NOTHING {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return new TreeFacts(facts.tree(), facts.onTheBooks(), facts.measurements(), facts.conditions(),
					facts.rulings()
						.stream()
						.map((ruled) -> new TreeFacts.Ruled(ruled.from(), ruled.recordedAt(), Set.of()))
						.toList());
		}
	},
	MERGES_LEAVE_THE_KEPT_TREE_ALONE {
		@Override
		void add(AnnotationConfigApplicationContext context) {
			context.registerBean("treeScores", TreeScores.class,
					() -> new TreeScores(context.getBean(TreeFactsReader.class), context.getBean(ScoreRows.class)) {
						@Override
						Set<UUID> withKept(Collection<UUID> trees) {
							return Set.copyOf(trees);
						}
					});
		}
	},
	WHAT_A_SPLIT_MOVES_IS_LOST {
		@Override
		PlacedTree placed(PlacedTree placed, JdbcClient jdbc) {
			TreeFacts facts = placed.facts();
			List<UUID> moved = jdbc.sql("select measurement from assignment").query(UUID.class).list();
			return new PlacedTree(with(facts,
					facts.measurements().stream().filter((one) -> !moved.contains(one.measurement())).toList(),
					facts.conditions()), placed.book());
		}
	},
	FIGURES_ARE_NEVER_CARRIED {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return carrying(facts, CarryForward.NONE);
		}
	},
	FIGURES_ARE_CARRIED_FOR_EVER {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return carrying(facts, new CarryForward(20, 20));
		}
	},
	A_GIRTH_ALONE_ENDS_A_SCORE {
		@Override
		TreeFacts facts(TreeFacts facts) {
			List<TreeFacts.Measured> counting = facts.measurements()
				.stream()
				.filter(TreeFacts.Measured::counts)
				.toList();
			boolean lacking = counting.stream()
				.max(TreeFacts.Measured.ORDER)
				.filter((last) -> last.figures().score() == null)
				.isPresent();
			return lacking ? with(facts, List.of(), facts.conditions()) : facts;
		}
	},
	CARRIED_FIGURES_ARE_NOT_NAMED {
		@Override
		ScoreRows rows(JdbcClient jdbc) {
			return new ScoreRows(jdbc) {
				@Override
				void insert(Change change, BookKey book, ScoreSpan span, Rulebook rulebook, LocalDate today) {
					ScoredTree scored = span.scored();
					super.insert(change, book,
							new ScoreSpan(new ScoredTree(scored.tree(), scored.measurement(), scored.score(),
									scored.measuredOn(), scored.seenOn(), scored.lostOn(), scored.carriedOver()),
									span.from(), span.until(), span.ended()),
							rulebook, today);
				}
			};
		}
	},
	WHAT_IS_REDUCED_AGAIN_IS_LOST {
		@Override
		PlacedTree placed(PlacedTree placed, JdbcClient jdbc) {
			TreeFacts facts = placed.facts();
			List<UUID> again = jdbc.sql("select measurement from reduction where version > 1").query(UUID.class).list();
			return new PlacedTree(with(facts,
					facts.measurements().stream().filter((one) -> !again.contains(one.measurement())).toList(),
					facts.conditions()), placed.book());
		}
	},
	TITLES_ASK_FOR_NO_MORE_SIGN_OFFS {
		@Override
		void add(AnnotationConfigApplicationContext context) {
			atStake(context,
					() -> new TitlesAtStake(context.getBean(TreeFactsReader.class),
							context.getBean(TitleIfCounted.class), context.getBean(TitleSpans.class),
							context.getBean(Standings.class), context.getBean(RulesReader.class)) {
						@Override
						boolean titleRestsOn(Change change, UUID tree, UUID measurement) {
							return false;
						}
					});
		}
	},
	TITLES_CHANGE_WITHOUT_A_COORDINATOR {
		@Override
		void add(AnnotationConfigApplicationContext context) {
			atStake(context,
					() -> new TitlesAtStake(context.getBean(TreeFactsReader.class),
							context.getBean(TitleIfCounted.class), context.getBean(TitleSpans.class),
							context.getBean(Standings.class), context.getBean(RulesReader.class)) {
						@Override
						public boolean needCoordinator(Change change, UUID tree, boolean accepted) {
							return false;
						}
					});
		}
	},
	NO_PHOTOS_ARE_ASKED_FOR {
		@Override
		void add(AnnotationConfigApplicationContext context) {
			atStake(context,
					() -> new TitlesAtStake(context.getBean(TreeFactsReader.class),
							context.getBean(TitleIfCounted.class), context.getBean(TitleSpans.class),
							context.getBean(Standings.class), context.getBean(RulesReader.class)) {
						@Override
						public int photosNeeded(Change change, UUID tree, UUID measurement, Rulebook ofItsDay) {
							return 0;
						}
					});
		}
	},
	WHAT_WAITS_FOR_A_COORDINATOR_COUNTS {
		@Override
		TreeFacts facts(TreeFacts facts) {
			return with(facts, facts.measurements().stream().map(SeededFault::notWaiting).toList(), facts.conditions());
		}
	},
	FIGURES_THAT_TAKE_NO_TITLE_RAISE_THE_FLOOR {
		@Override
		ScoreRows rows(JdbcClient jdbc) {
			return new ScoreRows(jdbc) {
				@Override
				void insert(Change change, BookKey book, ScoreSpan span, Rulebook rulebook, LocalDate today) {
					super.insert(change, book, span, rulebook, today);
					live(span.scored().tree()).stream()
						.filter(ScoreRow::open)
						.forEach((row) -> letContend(jdbc, row, rulebook, today));
				}

				@Override
				void judge(List<ScoreRow> rows, Rulebook rulebook, LocalDate day) {
					super.judge(rows, rulebook, day);
					rows.forEach((row) -> letContend(jdbc, row, rulebook, day));
				}
			};
		}
	},
	THE_LIST_OF_SPECIES_IS_FORGOTTEN {
		@Override
		void add(AnnotationConfigApplicationContext context) {
			context.registerBean("standings", Standings.class,
					() -> new Standings(context.getBean(TreeScores.class), context.getBean(ScoreRows.class),
							context.getBean(Books.class), context.getBean(TitleSpans.class),
							context.getBean(RulesReader.class), context.getBean(Journal.class)) {
						@Override
						Map<UUID, Title> holders(BookKey book, List<ScoredTree> contenders, Rulebook rulebook,
								LocalDate day) {
							Set<String> listed = rulebook.eligibleSpecies();
							BookKey any = (listed == null) ? book
									: new BookKey(book.county(), listed.iterator().next());
							return super.holders(any, contenders, rulebook, day);
						}
					});
		}
	},
	FOLDS_ARE_FORGOTTEN {
		@Override
		PlacedTree placed(PlacedTree placed, JdbcClient jdbc) {
			BookKey book = placed.book();
			return (book == null) ? placed : new PlacedTree(placed.facts(), new BookKey(book.county(),
					jdbc.sql("select species from identification where tree = ? order by recorded_at desc limit 1")
						.param(placed.facts().tree())
						.query(String.class)
						.single()));
		}
	};

	@Override
	public void accept(AnnotationConfigApplicationContext context) {
		context.registerBean("scoreRows", ScoreRows.class, () -> rows(context.getBean(JdbcClient.class)));
		context.registerBean("books", Books.class, () -> books(context.getBean(JdbcClient.class)));
		context.registerBean("titleSpans", TitleSpans.class, () -> titles(context.getBean(JdbcTemplate.class)));
		context.registerBean("treeFactsReader", TreeFactsReader.class,
				() -> new TreeFactsReader(context.getBean(JdbcClient.class)) {
					@Override
					PlacedTree read(UUID tree, Instant knownAt) {
						PlacedTree placed = super.read(tree, knownAt);
						return placed(new PlacedTree(facts(placed.facts()), placed.book()),
								context.getBean(JdbcClient.class));
					}
				});
		add(context);
	}

	/**
	 * Puts something else in the place of a part.
	 */
	void add(AnnotationConfigApplicationContext context) {
	}

	PlacedTree placed(PlacedTree placed, JdbcClient jdbc) {
		return placed;
	}

	ScoreRows rows(JdbcClient jdbc) {
		return new ScoreRows(jdbc);
	}

	Books books(JdbcClient jdbc) {
		return new Books(jdbc);
	}

	TitleSpans titles(JdbcTemplate jdbc) {
		return new TitleSpans(jdbc);
	}

	TreeFacts facts(TreeFacts facts) {
		return facts;
	}

	private static TreeFacts with(TreeFacts facts, List<TreeFacts.Measured> measurements,
			List<TreeFacts.Found> conditions) {
		return new TreeFacts(facts.tree(), facts.onTheBooks(), measurements, conditions, facts.rulings());
	}

	private static TreeFacts carrying(TreeFacts facts, CarryForward carries) {
		return with(facts, facts.measurements().stream().map((one) -> {
			VisitFigures of = one.figures();
			return new TreeFacts.Measured(one.measurement(), one.measuredOn(), one.filedAt(),
					new VisitFigures(of.girthInches(), of.heightFeet(), of.crownSpreadFeet(), of.score(), carries,
							of.methods()),
					one.carriedOver(), one.setAside(), one.broughtBy(), one.requiredSignOffs(), one.signOffs());
		}).toList(), facts.conditions());
	}

	private static void atStake(AnnotationConfigApplicationContext context, Supplier<TitlesAtStake> part) {
		context.registerBean("titlesAtStake", TitlesAtStake.class, part);
	}

	/**
	 * As if its figures were taken by methods that every rulebook here lets have a title.
	 */
	private static void letContend(JdbcClient jdbc, ScoreRow row, Rulebook rulebook, LocalDate day) {
		ScoredTree of = row.scored();
		ScoredTree otherwise = new ScoredTree(of.tree(), of.measurement(), of.score(), of.measuredOn(), of.seenOn(),
				of.lostOn(), of.carriedOver(), of.from(), new FigureMethods(Method.TAPE, Method.SINE, Method.AXES));
		jdbc.sql("update score set may_hold = ? where id = ?")
			.params(new Contention(rulebook).contends(otherwise, day), row.id())
			.update();
	}

	private static TreeFacts.Measured notWaiting(TreeFacts.Measured one) {
		TreeFacts.SignedOff bringer = one.broughtBy();
		return new TreeFacts.Measured(one.measurement(), one.measuredOn(), one.filedAt(), one.figures(),
				one.carriedOver(), one.setAside(),
				(bringer != null)
						? new TreeFacts.SignedOff(bringer.verdict(), bringer.broughtOwn(), bringer.revoked(), false)
						: null,
				one.requiredSignOffs(),
				one.signOffs()
					.stream()
					.map((word) -> new TreeFacts.SignedOff(word.verdict(), word.broughtOwn(), word.revoked(), false))
					.toList());
	}

	private static TreeFacts.Measured unrevoked(TreeFacts.Measured one) {
		return new TreeFacts.Measured(one.measurement(), one.measuredOn(), one.filedAt(), one.figures(),
				one.carriedOver(), one.setAside(), one.broughtBy(), one.requiredSignOffs(),
				one.signOffs()
					.stream()
					.map((word) -> new TreeFacts.SignedOff(word.verdict(), word.broughtOwn(), false, word.waiting()))
					.toList());
	}

}
