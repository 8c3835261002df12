// The paths through the course: what people want. Which lessons belong to each says the lesson; their order is that of the course.

export const PATH_IDS = ['more-trains', 'divide', 'wire', 'understand'] as const;
